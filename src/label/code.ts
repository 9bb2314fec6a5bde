import { asciiDigits } from './ascii-digits.ts'

/** The highest number that a container may have in a job. Those above it stand for the machine and for its steps. */
export const LAST_CONTAINER = 8999

/** The number in a label code that stands for the machine itself, and so for its job. */
export const MACHINE_NUMBER = 9000

/** What a typed or scanned text comes to as a label code. */
export type CodeReading =
  | { kind: 'code'; job: number; container: number; code: string }
  | { kind: 'misread'; digits: string }
  | { kind: 'not-a-code' }

/**
 * The two check digits of ISO/IEC 7064 MOD 97-10, 00 to 96, for a string of digits of any length: those that
 * make the whole leave the remainder 1 when divided by 97.
 * @throws RangeError when the string holds anything but 0-9, or nothing.
 */
export function checkDigits(digits: string): string {
  if (!/^[0-9]+$/.test(digits)) throw new RangeError(`Check digits need digits, not "${digits}"`)
  let remainder = 0
  for (const digit of digits) remainder = (remainder * 10 + Number(digit)) % 97
  return String((98 - ((remainder * 100) % 97)) % 97).padStart(2, '0')
}

/**
 * The nine digits of a label code: job (3), number in the job (4), check digits (2).
 * @param job 1 to 999
 * @param container 1 to 9999: a container, the machine (9000) or a step (9001 to 9999)
 * @throws RangeError when a number does not fit, for the caller deals the numbers.
 */
export function labelCode(job: number, container: number): string {
  if (!Number.isInteger(job) || job < 1 || job > 999) throw new RangeError(`No job number: ${job}`)
  if (!Number.isInteger(container) || container < 1 || container > 9999) {
    throw new RangeError(`No container number: ${container}`)
  }
  const body = String(job).padStart(3, '0') + String(container).padStart(4, '0')
  return body + checkDigits(body)
}

/**
 * The number in a label code that stands for a step: 9001 for step 1, 9999 for step 999.
 * @param step 1 to 999
 * @throws RangeError for any other: a label code has no room for it.
 */
export function stepNumber(step: number): number {
  if (!Number.isInteger(step) || step < 1 || step > 9999 - MACHINE_NUMBER)
    throw new RangeError(`No step number that a label code has room for: ${step}`)
  return MACHINE_NUMBER + step
}

/** The step that a number in a label code stands for; null where it stands for a container or the machine. */
export function stepOf(number: number): number | null {
  return Number.isInteger(number) && number > MACHINE_NUMBER && number <= 9999
    ? number - MACHINE_NUMBER
    : null
}

/**
 * A nine-digit code as people write it: `017 0042 95`.
 * @throws RangeError when it is not nine digits.
 */
export function groupedCode(code: string): string {
  if (!/^[0-9]{9}$/.test(code)) throw new RangeError(`Not nine digits: "${code}"`)
  return `${code.slice(0, 3)} ${code.slice(3, 7)} ${code.slice(7)}`
}

// Between the groups: white space, dots, and the hyphens and dashes of any keyboard.
const separator = '[\\s.\\-\\u2010-\\u2015\\u2212]'
// ISO/IEC 15424: a scanner may put a symbology identifier before the data, "]Q3" for a QR symbol.
const symbology = '\\][A-Za-z][0-9A-Za-z]'

const threeGroups = new RegExp(`^[0-9]+(?:${separator}+[0-9]+){0,2}$`, 'u')
const codeAtEnd = new RegExp(
  `(?:${symbology}\\p{Cc}*)?([0-9]{3})${separator}*([0-9]{4})${separator}*([0-9]{2})[\\s\\p{Cc}]*$`,
  'u',
)

/**
 * Reads a whole line as a label code. Spaces, dots and hyphens between at most three groups, a symbology
 * identifier, control characters of a scanner and digits of other scripts are accepted.
 *
 * `misread` means seven to eleven digits that are no code: wrong check digits, or a digit dropped or doubled.
 * A `code` is right in itself; whether such a label was ever printed, the caller has to look up.
 */
export function readCode(text: string): CodeReading {
  const line = asciiDigits(text)
    .replace(/(?!\s)\p{Cc}/gu, '')
    .trim()
    .replace(new RegExp(`^${symbology}`, 'u'), '')
    .trim()
  if (!threeGroups.test(line)) return { kind: 'not-a-code' }
  const digits = line.replace(/[^0-9]/g, '')
  if (digits.length < 7 || digits.length > 11) return { kind: 'not-a-code' }
  if (!isCode(digits)) return { kind: 'misread', digits }
  return {
    kind: 'code',
    job: Number(digits.slice(0, 3)),
    container: Number(digits.slice(3, 7)),
    code: digits,
  }
}

/**
 * Finds a whole valid code at the end of a line that may hold words before it, as when a scanner bursts into a
 * line half typed. The last nine digits count, so digits typed just before the burst stay with the words.
 * The words come back unchanged, with the spaces before the code. One of 97 nine-digit endings is valid by
 * chance, so the caller must also know the code before taking it for a scan.
 * @returns null when the line does not end in a valid code.
 */
export function splitTail(line: string): { words: string; code: string } | null {
  const characters = [...line]
  const match = codeAtEnd.exec(characters.map(asOneCharacter).join(''))
  if (match === null) return null
  const code = match.slice(1).join('')
  return isCode(code) ? { words: characters.slice(0, match.index).join(''), code } : null
}

/**
 * The known codes that a misread may have been meant for, the likeliest slip first, five at most; codes with
 * the same slip keep their order. The slips, in order: one digit wrong, two neighbours swapped, two digits
 * swapped around a third, a digit dropped, a digit doubled or added, the check digits left out, two digits wrong.
 */
export function nearCodes(misread: string, known: Iterable<string>): string[] {
  const near: { code: string; rank: number }[] = []
  for (const code of known) {
    const rank = slipRank(code, misread)
    if (rank !== null) near.push({ code, rank })
  }
  near.sort((a, b) => a.rank - b.rank)
  return near.slice(0, 5).map(({ code }) => code)
}

function isCode(digits: string): boolean {
  const body = digits.slice(0, 7)
  // Compared with the generated ones: a test for the remainder alone would also let 97 and 98 pass for 00 and 01.
  return digits.length === 9 && !/^000|^...0000/.test(body) && digits.slice(7) === checkDigits(body)
}

// Places in the folded line must stay places in the line as typed, so each character becomes exactly one.
function asOneCharacter(character: string): string {
  const folded = asciiDigits(character)
  return folded.length === 1 ? folded : '?'
}

function slipRank(code: string, misread: string): number | null {
  if (misread.length === code.length) return replacedRank(code, misread)
  if (misread.length === code.length - 1 && isWithoutOneDigit(misread, code)) return 4
  if (misread.length === code.length + 1 && isWithoutOneDigit(code, misread)) return 5
  if (misread === code.slice(0, -2)) return 6
  return null
}

function replacedRank(code: string, misread: string): number | null {
  const wrong = [...code].flatMap((digit, place) => (digit === misread[place] ? [] : [place]))
  if (wrong.length < 2) return wrong.length
  const [first, second] = wrong as [number, number]
  if (wrong.length > 2) return null
  const swapped = code[first] === misread[second] && code[second] === misread[first]
  if (swapped && second - first === 1) return 2
  if (swapped && second - first === 2) return 3
  return 7
}

function isWithoutOneDigit(shorter: string, longer: string): boolean {
  let place = 0
  while (place < shorter.length && shorter[place] === longer[place]) place++
  return shorter.slice(place) === longer.slice(place + 1)
}
