import type { Screen } from './navigation.ts'

/** The main screens in the order of their numbers: `.1` goes to the first, `.` alone to where one is. */
export const SCREENS: readonly { digit: string; name: string; says: string; screen: Screen }[] = [
  { digit: '', name: 'NOW', says: 'where you are, and what comes next', screen: { at: 'now' } },
  { digit: '1', name: 'OFF', says: 'what comes off', screen: { at: 'off' } },
  { digit: '2', name: 'LIES', says: 'what lies where', screen: { at: 'lies', words: '' } },
  { digit: '3', name: 'BACK', says: 'what goes back', screen: { at: 'back' } },
  { digit: '4', name: 'LEFT', says: 'what is left over', screen: { at: 'left' } },
  { digit: '5', name: 'LOG', says: 'what happened', screen: { at: 'log' } },
  { digit: '6', name: 'DUE', says: 'what is judged and awaited', screen: { at: 'due' } },
]

/** Something to press or to write beside the language of the record. */
export interface Key {
  /** What is pressed or written; by the first it is known. */
  words: readonly [string, ...string[]]
  says: string
  /** Lines to write, where it is written and not pressed. */
  lines?: readonly string[]
}

/** Every key and what it does, as `?` shows them. Those of a number pad come first. */
export const KEYS: readonly Key[] = [
  { words: ['Enter'], says: 'takes what is typed; else does what stands beside it' },
  { words: ['1 to 99'], says: 'chooses what has that number on the screen' },
  { words: ['0'], says: 'takes back the last entry', lines: ['0'] },
  { words: ['. and a digit'], says: 'goes to a screen from anywhere: they stand below' },
  {
    words: ['a label code'],
    says: 'answers the label, anywhere, behind words too. Where they wait for a place, as "put 5 in", it is that place.',
  },
  { words: ['+ and -', '+', '-'], says: 'on an empty line: a page down, a page up' },
  { words: ['*', '.0'], says: 'on an empty line: large letters and back; .0 does it too' },
  { words: ['Backspace'], says: 'erases; on an empty line it goes back to where you were' },
  { words: ['?'], says: 'this page; with words behind it, looks for them here', lines: ['?', '? WORDS'] },
  { words: ['Esc'], says: 'clears the line; on an empty one leaves a question' },
  {
    words: ['a line not taken'],
    says: 'typing replaces it, Enter clears it, a space mends it. A scan replaces it, an arrow mends it too.',
  },
  { words: ['arrow keys'], says: 'move in the line, along rows, over a drawing; never needed' },
  { words: ['Ctrl-C'], says: 'leaves at once; everything is recorded' },
]

/** Words that the screens know beside the language of the record. */
export const SCREEN_WORDS: readonly Key[] = [
  {
    words: ['label'],
    says: 'what to write on the bag in hand or on the screen',
    lines: ['label'],
  },
  { words: ['labels'], says: 'prints the label of the bag in hand or on the screen', lines: ['labels'] },
  {
    words: ['sound'],
    says: 'turns the bell on or off: one is done, two say look, three say refused',
    lines: ['sound off', 'sound on'],
  },
  { words: ['large'], says: 'large letters, and small again', lines: ['large'] },
  { words: ['told'], says: 'all that came of the last print or import', lines: ['told'] },
  { words: ['jobs'], says: 'the jobs of this home', lines: ['jobs'] },
  { words: ['new job'], says: 'begins a job for another machine', lines: ['new job', 'new job garage twin'] },
  { words: ['quit', 'exit', 'q'], says: 'leaves, with a note when work is under way', lines: ['quit'] },
]

/** What leaves, as people type it. */
export const QUIT = /^(?:quit|exit|q)$/i
