import { withoutSteering } from '../label/without-steering.ts'
import type { Result } from './result.ts'

/** Where a command's words go: the terminal, a pipe, or a test. */
export interface Surface {
  out(text: string): void
  error(text: string): void
  /** A file, as it is. */
  bytes?(bytes: Uint8Array): void
}

/**
 * Says what came of a command: for a person its words, what went wrong on standard error; with `json` one object
 * on standard output, whatever came.
 */
export function show(
  result: Result,
  surface: Surface,
  { json, warnings }: { json: boolean; warnings: string[] },
): void {
  if (result.ok && result.bytes && surface.bytes) {
    surface.bytes(result.bytes)
    // Standard output is the file: a word in it would spoil it.
    const words = json ? jsonLine(result, warnings) : result.text.map(withoutSteering).join('\n')
    surface.error(`${words}\n`)
    return
  }
  if (json) {
    surface.out(`${jsonLine(result, warnings)}\n`)
    return
  }
  for (const warning of warnings) surface.error(`${withoutSteering(warning)}\n`)
  if (result.ok && result.symbol) surface.out(`${result.symbol.join('\n')}\n`)
  if (result.text && result.text.length > 0) surface.out(`${result.text.map(withoutSteering).join('\n')}\n`)
  if (!result.ok) surface.error(`${toldLines(result).map(withoutSteering).join('\n')}\n`)
}

/** What went wrong, all of it, line by line. */
function toldLines({ told }: Extract<Result, { ok: false }>): string[] {
  return [told.what, ...told.lines.map((line) => `  ${line}`), ...(told.cure === '' ? [] : [told.cure])]
}

function jsonLine(result: Result, warnings: string[]): string {
  return escaped(JSON.stringify(asJson(result, warnings), plain))
}

function asJson(result: Result, warnings: string[]): object {
  const { entries } = result
  const recorded =
    entries && entries.length > 0 ? { entry: entries.at(-1), ...(entries.length > 1 && { entries }) } : {}
  const warned = warnings.length > 0 ? { warnings } : {}
  if (result.ok) {
    const answered = result.answer === undefined ? {} : { answer: result.answer }
    const { heeds } = result
    const heeded = heeds && heeds.length > 0 ? { heeds } : {}
    return { ok: true, ...recorded, ...heeded, ...answered, text: result.text.join('\n'), ...warned }
  }
  const before = result.text && result.text.length > 0 ? { before: result.text.join('\n') } : {}
  return {
    ok: false,
    code: result.code,
    ...result.facts,
    ...recorded,
    ...before,
    text: toldLines(result).join('\n'),
    ...warned,
  }
}

/** Maps as objects and sets as lists: JSON knows neither. */
function plain(_key: string, value: unknown): unknown {
  if (value instanceof Map) return Object.fromEntries(value)
  if (value instanceof Set) return [...value]
  return value
}

/** JSON escapes only the first 32: the others that steer a terminal, or turn its text around, are escaped too. */
function escaped(json: string): string {
  return json.replace(/[\p{Cc}\p{Cf}\u2028\u2029]/gu, (character) =>
    character
      .split('')
      .map((unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`)
      .join(''),
  )
}
