/** Dark modules of one row of a symbol that lie side by side: from the first, up to but without `to`. */
export interface Run {
  row: number
  from: number
  to: number
}

/** A symbol as the runs of dark modules in its rows: far fewer shapes than modules, and no seams within a row. */
export function darkRuns(modules: readonly (readonly boolean[])[]): Run[] {
  return modules.flatMap((cells, row) => {
    const runs: Run[] = []
    for (const [column, dark] of cells.entries()) {
      const last = runs.at(-1)
      if (dark && last?.to === column) last.to++
      else if (dark) runs.push({ row, from: column, to: column + 1 })
    }
    return runs
  })
}
