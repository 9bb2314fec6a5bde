import { textOf } from '../../../src/ui/text/line.ts'
import type { screens } from './bench.ts'

type Screens = ReturnType<typeof screens>

/** What stands above the screen, in one line. */
export function lessonOn({ desk }: Screens): string {
  return desk
    .above()
    .map((row) => textOf(row).trim())
    .join(' ')
}

/** What a lesson says to type, read out of its own words: what stands in quotes, else nothing but Enter. */
function wordsToType(lesson: string): string {
  const quoted = /"([^"]*)"/.exec(lesson)?.[1]
  if (quoted === undefined && !/\bpress Enter\b/i.test(lesson))
    throw new Error(`says nothing to do: ${lesson}`)
  return quoted ?? ''
}

/** The practice is over when nothing is left to learn. */
export function isOver(lesson: string): boolean {
  return lesson.includes('WELL DONE')
}

/** Does what the lessons say and nothing else, until they end; answers each lesson as it was read. */
export function followLessons(bench: Screens, most: number): string[] {
  const read: string[] = []
  for (;;) {
    const lesson = lessonOn(bench)
    read.push(lesson)
    if (isOver(lesson)) return read
    if (read.length > most) throw new Error(`never comes to an end:\n${read.slice(-12).join('\n')}`)
    doLesson(bench)
  }
}

/** Does what the lesson says that stands there now: its words have to be understood. */
export function doLesson(bench: Screens): void {
  const lesson = lessonOn(bench)
  if (lesson === '') throw new Error(`no lesson on ${bench.desk.screen.at}`)
  const words = wordsToType(lesson)
  // Whoever starts to type clears what stands in the line.
  if (words !== '') bench.type('\x1b')
  bench.type(words)
  const meaning = bench.desk.meaning()
  if (words !== '' && meaning.kind !== 'act')
    throw new Error(`not understood on ${bench.desk.screen.at}: ${lesson}`)
  bench.enter('')
}
