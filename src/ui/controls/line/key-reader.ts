/** Keys that type nothing. */
export type Key =
  | 'up'
  | 'down'
  | 'left'
  | 'right'
  | 'home'
  | 'end'
  | 'page-up'
  | 'page-down'
  | 'delete'
  | 'escape'
  | 'clear'
  | 'leave'

/** What raw terminal input comes to: text for the line, a whole paste, or a key. */
export type Pressed = { text: string } | { paste: string } | { key: Key }

export type KeyReader = {
  /** Takes the next chunk and gives back what it completed, in order. */
  push(chunk: string): Pressed[]
  /** Whether an ESC waits to become the Escape key or the beginning of a sequence. */
  waiting(): boolean
  /** Nothing followed: the ESC was the key. */
  flush(): Pressed[]
  /** Some time without a key: what becomes of a paste that has begun and not ended. An ESC alone gives it up. */
  settle(): PasteWithoutEnd | null
}

export type PasteWithoutEnd = 'goes on' | 'given up'

/**
 * Tells keys from text in raw terminal input, one character at a time, so that it does not matter how the input was
 * cut. A bracketed paste is one piece; sequences that are no key of ours are dropped; Alt with a key is the key, also
 * where it looks like the beginning of a sequence that then never comes: a scan after it is not swallowed.
 * Strings that terminals send (OSC, DCS) go on as they came, for the line drops them.
 */
export function keyReader(): KeyReader {
  let held = ''
  let paste: string | null = null
  let pasteTail = ''
  /** How many signs came since the STX of a scanner; null outside of such a frame. */
  let framed: number | null = null

  function push(chunk: string): Pressed[] {
    const pressed: Pressed[] = []
    for (const character of chunk) {
      for (const each of take(character)) append(pressed, each)
    }
    return pressed
  }

  function take(character: string): Pressed[] {
    if (paste !== null) return pasted(character)
    if (held === '') return begin(character)
    if (held !== '\x1b' && !goesOn(held, character)) {
      const begun = held.slice(1)
      held = ''
      return [...(character === '\x1b' ? [] : [{ text: begun }]), ...begin(character)]
    }
    held += character
    if (held === '\x1b[' || held === '\x1bO') return []
    if (held.startsWith('\x1b[') && !/[@-~]$/.test(held) && held.length < longest) return []
    if (held === '\x1b\x1b') {
      held = '\x1b'
      return [{ key: 'escape' }]
    }
    const sequence = held
    held = ''
    return sequence.startsWith('\x1b[') || sequence.startsWith('\x1bO') ? named(sequence) : alt(sequence)
  }

  function begin(character: string): Pressed[] {
    if (character === '\x1b') {
      held = character
      framed = null
      return []
    }
    if (isFrame(character)) return character === ETX ? [{ text: '\t' }] : []
    const key = CONTROLS[character]
    return key ? [{ key }] : [{ text: character }]
  }

  /** Some scanners put STX before a code and ETX behind it, which would be Ctrl-C: theirs ends the code as a TAB does. */
  function isFrame(character: string): boolean {
    const isEnd = character === ETX && framed !== null && framed > 0
    if (character === STX) framed = 0
    else if (/\p{Cc}/u.test(character)) framed = null
    else if (framed !== null) framed += 1
    return isEnd || character === STX
  }

  function named(sequence: string): Pressed[] {
    if (sequence === '\x1b[200~') {
      paste = ''
      pasteTail = ''
      return []
    }
    const sign = KEYPAD[sequence.slice(1)]
    if (sign !== undefined) return [{ text: sign }]
    // Modifiers (`1;5C`) do not change what a key is.
    const key =
      SEQUENCES[
        sequence
          .slice(1)
          .replace(/^\[1;\d+(?=[A-Z])/, '[')
          .replace(/;\d+~$/, '~')
      ]
    return key ? [{ key }] : []
  }

  function alt(sequence: string): Pressed[] {
    const rest = sequence.slice(1)
    return BESIDE_STRINGS.includes(rest) ? [{ text: sequence }] : begin(rest)
  }

  function pasted(character: string): Pressed[] {
    const text = paste + character
    // Of a long paste nobody looks at all of it for each character.
    pasteTail = (pasteTail + character).slice(-pasteEnd.length)
    const isOver = pasteTail === pasteEnd
    // Ctrl-C always leaves, even out of a paste whose end never came.
    const isLeft = character === ETX
    paste = isOver || isLeft ? null : text
    if (isLeft) return [{ key: 'leave' }]
    return isOver ? [{ paste: text.slice(0, -pasteEnd.length) }] : []
  }

  return {
    push,
    waiting: () => held === '\x1b',
    flush() {
      if (held !== '\x1b') return []
      held = ''
      return [{ key: 'escape' }]
    },
    settle() {
      if (paste === null) return null
      if (!pasteTail.endsWith('\x1b')) return 'goes on'
      paste = null
      return 'given up'
    },
  }
}

/** Whether a character may stand in a sequence: no control does, and no digit right behind the O of one. */
function goesOn(held: string, character: string): boolean {
  return !/\p{Cc}/u.test(character) && !(held === '\x1bO' && /\d/.test(character))
}

const longest = 24
/** What begins a string that a terminal sends (OSC, DCS), and the backslash that ends it. */
const BESIDE_STRINGS = ']PX^_\\'
const pasteEnd = '\x1b[201~'
const STX = '\x02'
const ETX = '\x03'

const CONTROLS: Record<string, Key> = {
  [ETX]: 'leave',
  '\x01': 'home',
  '\x05': 'end',
  '\x15': 'clear',
}

/** The number pad of a terminal that a program before left in application mode (DECKPAM): then its keys come so. */
const KEYPAD: Record<string, string> = {
  OM: '\r',
  Oj: '*',
  Ok: '+',
  Ol: ',',
  Om: '-',
  On: '.',
  Oo: '/',
  ...Object.fromEntries([...'pqrstuvwxy'].map((final, digit) => [`O${final}`, String(digit)])),
}

const SEQUENCES: Record<string, Key> = {
  '[A': 'up',
  '[B': 'down',
  '[C': 'right',
  '[D': 'left',
  '[H': 'home',
  '[F': 'end',
  OA: 'up',
  OB: 'down',
  OC: 'right',
  OD: 'left',
  OH: 'home',
  OF: 'end',
  '[1~': 'home',
  '[7~': 'home',
  '[4~': 'end',
  '[8~': 'end',
  '[3~': 'delete',
  '[5~': 'page-up',
  '[6~': 'page-down',
}

function append(pressed: Pressed[], next: Pressed): void {
  const last = pressed.at(-1)
  if (last && 'text' in last && 'text' in next) last.text += next.text
  else pressed.push(next)
}
