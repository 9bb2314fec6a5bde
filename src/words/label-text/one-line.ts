/**
 * What a line on paper may hold: one line, nothing that hides or turns the reading order. Names are cleaned when they
 * are entered; a record written elsewhere may not have been.
 */
export function oneLine(text: string): string {
  return text
    .replace(/[\s\u0085]+/g, ' ')
    .replace(/\p{C}/gu, '')
    .trim()
}

/** The same for each; what is left empty goes. */
export function oneLines(texts: readonly string[]): string[] {
  return texts.map(oneLine).filter((text) => text !== '')
}
