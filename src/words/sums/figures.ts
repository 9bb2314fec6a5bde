/** Stands under every value that was worked out. */
export const NOT_A_SPECIFICATION = 'Worked out, not a specification: the service manual decides.'

/** A number to so many significant figures, with neither an exponent nor zeros at its end: 29.83, 1356, 0.00394. */
export function figure(value: number, figures = 4): string {
  const rounded = Number(value.toPrecision(figures))
  if (rounded === 0) return '0'
  const places = Math.max(0, figures - 1 - Math.floor(Math.log10(Math.abs(rounded))))
  const text = rounded.toFixed(Math.min(places, 12))
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text
}

/** A share in percent, without decimals: `70 %`. */
export function percent(share: number): string {
  return `${Math.round(share * 100)} %`
}
