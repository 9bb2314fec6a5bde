/**
 * The text with its names cut at their ends, as little as makes it fit; null when cutting all of them is not enough.
 * Counts, sizes and positions are kept: whatever holds a digit, and the word before a bare number (`hex 8`).
 */
export function shorten(text: string, fits: (shortened: string) => boolean): string | null {
  const runs = runsOf(text)
  const longest = Math.max(0, ...runs.map((run) => (run.name ? run.letters.length : 0)))
  if (longest === 0) return null
  const cutTo = (length: number) => runs.map((run) => (run.name ? cut(run, length) : run.text)).join(' ')
  if (!fits(cutTo(1))) return null
  let [good, bad] = [1, longest]
  while (bad - good > 1) {
    const middle = (good + bad) >> 1
    if (fits(cutTo(middle))) good = middle
    else bad = middle
  }
  return cutTo(good)
}

/**
 * The text cut at its end, as little as makes it fit, for what is said whole elsewhere; null when not even its first
 * word fits.
 */
export function cutEnd(text: string, fits: (shortened: string) => boolean): string | null {
  const letters = lettersOf(text)
  const cutTo = (length: number) => `${letters.slice(0, length).join('').trimEnd()}…`
  const least = lettersOf(text.split(' ', 1)[0] ?? '').length
  let [good, bad] = [least, letters.length]
  if (!fits(cutTo(good))) return null
  while (bad - good > 1) {
    const middle = (good + bad) >> 1
    if (fits(cutTo(middle))) good = middle
    else bad = middle
  }
  return cutTo(good)
}

/** A text as what a reader takes for one letter each, so that no mark is cut from its letter. */
export function lettersOf(text: string): string[] {
  return Array.from(new Intl.Segmenter().segment(text), ({ segment }) => segment)
}

interface Run {
  text: string
  letters: string[]
  /** May be cut. */
  name: boolean
}

// No count, size or range is longer; what is, is a name with a number in it.
const longestFigure = 24

function runsOf(text: string): Run[] {
  const words = text.split(' ')
  const kept = words.map((word, n) => isFigure(word) || (isNumber(words[n + 1]) && word.length <= 8))
  const runs: { words: string[]; name: boolean }[] = []
  for (const [n, word] of words.entries()) {
    const name = kept[n] !== true
    const last = runs.at(-1)
    if (last?.name === name) last.words.push(word)
    else runs.push({ words: [word], name })
  }
  return runs.map((run) => {
    const whole = run.words.join(' ')
    return { text: whole, letters: lettersOf(whole), name: run.name }
  })
}

function isFigure(word: string): boolean {
  if (word.length > longestFigure) return false
  return /\p{N}/u.test(word) || !/[\p{L}\p{N}]/u.test(word)
}

function isNumber(word: string | undefined): boolean {
  return word !== undefined && word.length <= longestFigure && /^\p{N}[\p{N}.,;:)]*$/u.test(word)
}

function cut({ text, letters }: Run, length: number): string {
  if (letters.length <= length) return text
  return `${letters
    .slice(0, length - 1)
    .join('')
    .trimEnd()}…`
}
