import { type Piece, scanAssembler } from '../../../label/scan-assembler.ts'
import type { Key, Pressed } from './key-reader.ts'

/**
 * What the line did not keep for itself: a finished line with what stood before and after the cursor, a paste of
 * several, or a key for the screen.
 */
export type LineEvent =
  | { kind: 'line'; before: string; after: string }
  | { kind: 'paste'; lines: string[] }
  | { kind: 'key'; key: ScreenKey }

export type ScreenKey =
  | 'up'
  | 'down'
  | 'left'
  | 'right'
  | 'page-up'
  | 'page-down'
  | 'back'
  | 'escape'
  | 'large'
  | 'leave'

/** A line that what is typed next replaces: Enter clears what was not taken, and sends again what was kept. */
export type Standing = 'not-taken' | 'kept'

export type LineEditor = {
  /**
   * Takes what was pressed and gives back what the screen has to do about it, in order. Each is to be done before the
   * next is asked for: what it leaves in the line stands before what is typed after it.
   */
  take(pressed: Pressed): Iterable<LineEvent>
  /** The text before and after the cursor. */
  before(): string
  after(): string
  /** Puts another text in its place. */
  set(before: string, after?: string): void
  /** Puts back a line that was not taken: what is typed or scanned next replaces it and Enter clears it, unless mended. */
  offer(before: string, after?: string): void
  /**
   * Puts back a line that was not done through no fault of its own: Enter sends it again, and what is typed or scanned next
   * replaces it, unless it is mended. `onReplaced` is told where it was replaced.
   */
  keep(before: string, after: string, onReplaced: () => void): void
  /** What the next sign replaces, by what Enter does with it; null where the line goes on. */
  standing(): Standing | null
  /** Time has passed: a Backspace from now on is meant for itself, not the end of a held one. */
  settle(): void
}

/**
 * The one line into which everything is typed and scanned. The scan assembler gathers the text before the cursor, so
 * a scanner's burst stays whole wherever the cursor stands. Three signs of the number pad act on an empty line alone.
 */
export function lineEditor(): LineEditor {
  const assembler = scanAssembler()
  let after = ''
  let isErasing = false
  let standing: Standing | null = null
  let onReplaced = () => {}

  function* take(pressed: Pressed): Iterable<LineEvent> {
    if ('key' in pressed) yield* press(pressed.key)
    else if ('paste' in pressed) {
      replaceStanding()
      yield* gathered(assembler.paste(pressed.paste))
    } else for (const character of pressed.text) yield* type(character)
  }

  function replaceStanding(): void {
    if (standing === null) return
    const wasKept = standing === 'kept'
    empty()
    if (wasKept) onReplaced()
  }

  function empty(): void {
    assembler.reset()
    after = ''
    standing = null
  }

  function stand(before: string, rest: string, as: Standing): void {
    assembler.set(before)
    after = rest
    isErasing = false
    standing = before + rest === '' ? null : as
  }

  function type(character: string): LineEvent[] {
    // A space goes on with the line and Backspace mends it; trying the same again would come to the same.
    if (standing === 'not-taken' && character === '\r') {
      empty()
      // The line hears of it, so that a line feed behind it is no Enter of its own.
      assembler.push(character)
      return []
    }
    // No line begins with one of these: beside a line that stands they act as on an empty one.
    const beside = standing !== null && ON_EMPTY[character]
    if (beside) return [screen(beside)]
    if (/[^\s\p{Cc}]/u.test(character)) replaceStanding()
    // A line feed may only be the end of the Enter that sent the line.
    if (character !== '\n') standing = null
    if (isEmpty()) {
      if (character === '\b' || character === '\x7f') return isErasing ? [] : [screen('back')]
      const key = ON_EMPTY[character]
      if (key) return [screen(key)]
    }
    isErasing = character === '\b' || character === '\x7f'
    return gathered(assembler.push(character))
  }

  function gathered(pieces: Piece[]): LineEvent[] {
    return pieces.map((piece) => {
      if (piece.kind === 'paste') return { kind: 'paste', lines: piece.lines }
      const event: LineEvent = { kind: 'line', before: piece.text, after }
      after = ''
      return event
    })
  }

  function press(key: Key): LineEvent[] {
    isErasing = false
    if (MENDS.has(key)) standing = null
    switch (key) {
      case 'left':
      case 'right':
        if (isEmpty()) return [screen(key)]
        moveTo(key === 'left' ? -lastOf(assembler.pending()).length : firstOf(after).length)
        return []
      case 'home':
        moveTo(-assembler.pending().length)
        return []
      case 'end':
        moveTo(after.length)
        return []
      case 'delete':
        after = after.slice(firstOf(after).length)
        return []
      case 'escape':
      case 'clear': {
        const wasEmpty = isEmpty()
        empty()
        return wasEmpty && key === 'escape' ? [screen('escape')] : []
      }
      default:
        return [screen(key)]
    }
  }

  function isEmpty(): boolean {
    return assembler.pending() === '' && after === ''
  }

  function moveTo(by: number): void {
    const text = assembler.pending() + after
    const place = assembler.pending().length + by
    assembler.set(text.slice(0, place))
    after = text.slice(place)
  }

  return {
    take,
    before: () => assembler.pending(),
    after: () => after,
    set(before, rest = '') {
      assembler.set(before)
      after = rest
      isErasing = false
      standing = null
    },
    offer: (before, rest = '') => stand(before, rest, 'not-taken'),
    keep(before, rest, replaced) {
      stand(before, rest, 'kept')
      onReplaced = replaced
    },
    standing: () => standing,
    settle() {
      isErasing = false
    },
  }
}

/** Keys that go into the line: it is kept from then on. */
const MENDS = new Set<Key>(['left', 'right', 'home', 'end', 'delete'])

const ON_EMPTY: Record<string, ScreenKey> = { '+': 'page-down', '-': 'page-up', '*': 'large' }

function screen(key: ScreenKey): LineEvent {
  return { kind: 'key', key }
}

/** No character that can be read has more code units: of a long line not all of it is looked at for one. */
const LONGEST_SIGN = 256

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' })

function firstOf(text: string): string {
  return [...graphemes.segment(text.slice(0, LONGEST_SIGN))][0]?.segment ?? ''
}

function lastOf(text: string): string {
  return [...graphemes.segment(text.slice(-LONGEST_SIGN))].at(-1)?.segment ?? ''
}
