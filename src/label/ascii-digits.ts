/**
 * The text with every decimal digit of any script (full-width, Arabic-Indic, Devanagari, ...) as 0-9, and with
 * compatibility forms folded by Unicode NFKC (circled and superscript digits, no-break and full-width signs).
 */
export function asciiDigits(text: string): string {
  return text.normalize('NFKC').replace(/\p{Nd}/gu, (digit) => (digit < '\x80' ? digit : digitValue(digit)))
}

// Unicode lays the decimal digits of every script out as runs of ten, zero first, so the number of digits
// before one in its run, modulo ten, is its value (The Unicode Standard, section 4.6, "Numeric Value").
function digitValue(digit: string): string {
  let codePoint = digit.codePointAt(0) as number
  let digitsBefore = 0
  while (/\p{Nd}/u.test(String.fromCodePoint(--codePoint))) digitsBefore++
  return String(digitsBefore % 10)
}
