/** A length in millimetres, to a tenth: `33.9 mm`. */
export function millimetres(length: number): string {
  return `${tenths(length)} mm`
}

/** A width and a height in millimetres: `64 x 33.9 mm`. */
export function sizeText({ width, height }: { width: number; height: number }): string {
  return `${tenths(width)} x ${millimetres(height)}`
}

/** A character as it can be found again: `'§' (U+00A7)`; by its number alone where it is not seen. */
export function characterName(character: string): string {
  const number = character.codePointAt(0)?.toString(16).toUpperCase().padStart(4, '0')
  return /\p{C}|\p{Z}/u.test(character) ? `U+${number}` : `'${character}' (U+${number})`
}

function tenths(length: number): number {
  return Math.round(length * 10) / 10
}
