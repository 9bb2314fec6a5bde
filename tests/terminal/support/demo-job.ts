import { readFileSync } from 'node:fs'
import { ToldBeside } from './told-beside.ts'

/** The lines of the demo job. */
export function demoLines(): string[] {
  const lines = readFileSync('jobs/demo/blue-twin.txt', 'utf8').split('\n')
  return lines.filter((line) => line.trim() !== '' && !/^(?:#|==)/.test(line))
}

/** Tells the demo job in a home, up to a line and so many more. */
export function tellDemo(home: string, until: string, more = 0): ToldBeside {
  const lines = demoLines()
  const told = new ToldBeside(home)
  const end = lines.indexOf(until)
  if (end < 0) throw new Error(`the demo job has no line "${until}"`)
  for (const line of lines.slice(0, end + 1 + more)) told.tell(line)
  return told
}
