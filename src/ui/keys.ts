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

/** Every key and what it does, as `?` shows them. Those of a number pad come first. */
export const KEYS: readonly { key: string; says: string }[] = [
  { key: 'Enter', says: 'takes what is typed; on an empty line it does what stands beside it' },
  { key: '1 to 99', says: 'chooses what has that number on the screen' },
  { key: '0', says: 'takes back the last entry' },
  { key: '. and a digit', says: 'goes to a screen: .1 OFF .2 LIES .3 BACK .4 LEFT .5 LOG .6 DUE, . NOW' },
  { key: 'a label code', says: 'answers the label, from any screen, even behind words; ends "put 5 in"' },
  { key: '+ and -', says: 'on an empty line: a page down, a page up' },
  { key: '*', says: 'on an empty line: large letters, and small again' },
  { key: 'Backspace', says: 'erases; on an empty line it goes back to where you were' },
  { key: '?', says: 'this help; "? fit" about one word' },
  { key: 'Esc', says: 'clears the line; on an empty one leaves a question' },
  {
    key: 'a line not taken',
    says: 'typing or a scan replaces it, Enter clears it; a space or an arrow mends it',
  },
  { key: 'arrows', says: 'move in the line, along the rows and over a drawing; never needed' },
  { key: 'Ctrl-C', says: 'leaves at once; everything is recorded' },
]

/** Words that the screens know beside the language of the record. */
export const SCREEN_WORDS: readonly { word: string; says: string }[] = [
  { word: 'label', says: 'what to write on the bag that is in hand or on the screen' },
  { word: 'labels', says: 'prints its label' },
  { word: 'sound', says: 'the bell: one is done, two say look, three say refused; "sound off", "sound on"' },
  { word: 'told', says: 'all that came of the last print or import' },
  { word: 'jobs', says: 'the jobs of this home' },
  { word: 'quit', says: 'leaves, with a note when work is under way' },
]

/** What leaves, as people type it. */
export const QUIT = /^(?:quit|exit|q)$/i
