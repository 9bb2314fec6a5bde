import { readdirSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { readStock, type Stock, type StockFault } from '../label/stock.ts'
import { errnoOf } from '../storage/files/file-system.ts'
import { readSmallFile } from '../storage/files/read-small-file.ts'

/** A file of a stock that cannot be used, and why. */
export interface BadStock {
  path: string
  why: 'not-json' | 'unreadable' | 'too-large' | { faults: StockFault[] }
}

export interface Stocks {
  /** By name; one of the user's own takes the place of one that came with the program. */
  stocks: Map<string, Stock>
  bad: BadStock[]
}

/** The stocks that came with the program, and those in the user's own folder `labels` beside the jobs. */
export function findStocks(home: string): Stocks {
  const found: Stocks = { stocks: new Map(), bad: [] }
  for (const folder of new Set([ownFolder(), labelsFolder(home)])) readFolder(folder, found)
  return found
}

/**
 * Where a user keeps stocks of his own, and where what is printed to a file goes: beside a folder of jobs that is called
 * so, else inside it, for what lies around another folder is not ours.
 */
export function labelsFolder(home: string): string {
  return join(basename(home) === 'jobs' ? dirname(home) : home, 'labels')
}

function readFolder(folder: string, { stocks, bad }: Stocks): void {
  for (const name of namesIn(folder)) {
    const path = join(folder, name)
    let raw: unknown
    try {
      // Some editors put a mark of its encoding before a text.
      raw = JSON.parse(readSmallFile(path, MOST_BYTES).replace(/^\ufeff/, ''))
    } catch (error) {
      bad.push({ path, why: whyBad(error) })
      continue
    }
    const reading = readStock(raw)
    if (reading.ok) stocks.set(reading.stock.name.toLowerCase(), reading.stock)
    else bad.push({ path, why: { faults: reading.refusal.faults } })
  }
}

function whyBad(error: unknown): 'not-json' | 'unreadable' | 'too-large' {
  if (error instanceof SyntaxError) return 'not-json'
  return errnoOf(error) === 'EOVERFLOW' ? 'too-large' : 'unreadable'
}

/** A stock is a few lines. */
const MOST_BYTES = 100_000

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder, { withFileTypes: true })
      .filter((entry) => entry.isFile() && entry.name.endsWith('.json'))
      .map(({ name }) => basename(name))
      .sort()
  } catch {
    return []
  }
}

// labels/ lies beside src/ and dist/ alike; a bundle keeps its chunks one folder down.
function ownFolder(): string {
  const up = import.meta.url.includes('/src/print/') ? '../../labels' : '../labels'
  return fileURLToPath(new URL(up, import.meta.url))
}
