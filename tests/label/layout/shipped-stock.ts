import { readFileSync } from 'node:fs'
import { readStock, type Stock } from '../../../src/label/stock.ts'

/** A stock of labels/, by its name. */
export function shippedStock(name: string): Stock {
  const reading = readStock(JSON.parse(readFileSync(`labels/${name}.json`, 'utf8')))
  if (!reading.ok) throw new Error(`labels/${name}.json is no stock`)
  return reading.stock
}
