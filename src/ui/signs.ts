import type { Line, Span, Tone } from './text/line.ts'

/** A state that a screen shows: always a sign and a word, with a colour beside them where there is one. */
export interface Sign {
  sign: string
  word: string
  tone: Tone
}

/** Every state there is to tell apart. No two share a sign and a word. */
export const SIGNS = {
  // A step on the way back
  done: { sign: '✓', word: 'DONE', tone: 'good' },
  ready: { sign: '>', word: 'READY', tone: 'active' },
  underway: { sign: '#', word: 'UNDER WAY', tone: 'active' },
  blocked: { sign: '!', word: 'BLOCKED', tone: 'wait' },
  redo: { sign: '<', word: 'DO AGAIN', tone: 'active' },
  stripping: { sign: '-', word: 'COMING OFF', tone: 'plain' },
  idle: { sign: '=', word: 'NOTHING TO DO', tone: 'plain' },
  // A piece that is judged, and what is awaited
  notChecked: { sign: '!', word: 'NOT CHECKED', tone: 'wait' },
  notGood: { sign: 'X', word: 'NOT GOOD', tone: 'stop' },
  notCompared: { sign: '!', word: 'NOT COMPARED', tone: 'wait' },
  wrongOne: { sign: 'X', word: 'WRONG ONE', tone: 'stop' },
  good: { sign: '✓', word: 'GOOD', tone: 'good' },
  notAsked: { sign: 'o', word: 'NOT ASKED', tone: 'plain' },
  overdue: { sign: '!', word: 'OVERDUE', tone: 'stop' },
  due: { sign: '!', word: 'DUE', tone: 'wait' },
  away: { sign: '-', word: 'OUT', tone: 'plain' },
  unanswered: { sign: '?', word: 'SAY WHAT', tone: 'wait' },
  isBack: { sign: '✓', word: 'BACK', tone: 'good' },
  wanted: { sign: 'o', word: 'TO BUY', tone: 'plain' },
  ordered: { sign: '-', word: 'ORDERED', tone: 'plain' },
  sentBack: { sign: '<', word: 'SENT BACK', tone: 'wait' },
  partly: { sign: '#', word: 'PARTLY HERE', tone: 'active' },
  arrived: { sign: '✓', word: 'ARRIVED', tone: 'good' },
  cancelled: { sign: 'X', word: 'CANCELLED', tone: 'plain' },
  missing: { sign: '!', word: 'MISSING', tone: 'stop' },
  broken: { sign: 'X', word: 'BROKEN', tone: 'stop' },
  runOut: { sign: '!', word: 'RUN OUT', tone: 'stop' },
  setting: { sign: '#', word: 'SETTING', tone: 'active' },
  nothingDue: { sign: '✓', word: 'NOTHING DUE', tone: 'good' },
  // A scanned container
  fitsNow: { sign: '✓', word: 'FITS NOW', tone: 'good' },
  notYet: { sign: '!', word: 'NOT YET', tone: 'wait' },
  otherStep: { sign: 'X', word: 'OTHER STEP', tone: 'stop' },
  empty: { sign: 'o', word: 'EMPTY', tone: 'plain' },
  // Of a scanned container whose pieces are used: a new one is needed.
  notAgain: { sign: 'X', word: 'NOT AGAIN', tone: 'stop' },
  nothingToFit: { sign: 'o', word: 'NOT NEEDED', tone: 'plain' },
  otherJob: { sign: 'X', word: 'OTHER JOB', tone: 'stop' },
  unknown: { sign: '?', word: 'UNKNOWN', tone: 'stop' },
  misread: { sign: '?', word: 'MISREAD', tone: 'stop' },
  void: { sign: 'X', word: 'VOID', tone: 'stop' },
  unused: { sign: '+', word: 'UNUSED', tone: 'active' },
  step: { sign: '>', word: 'A STEP', tone: 'plain' },
  machine: { sign: '>', word: 'THE MACHINE', tone: 'plain' },
  // The answer to a line
  recorded: { sign: '✓', word: 'RECORDED', tone: 'good' },
  takenBack: { sign: '<', word: 'TAKEN BACK', tone: 'wait' },
  refused: { sign: 'X', word: 'REFUSED', tone: 'stop' },
  notDone: { sign: '!', word: 'NOT DONE', tone: 'stop' },
  notRecorded: { sign: '!', word: 'NOT RECORDED', tone: 'stop' },
  notUnderstood: { sign: '?', word: 'NOT UNDERSTOOD', tone: 'wait' },
  // The record
  onlyToRead: { sign: '!', word: 'ONLY TO READ', tone: 'stop' },
  notWhole: { sign: '!', word: 'NOT WHOLE', tone: 'stop' },
  outOfDate: { sign: '!', word: 'OUT OF DATE', tone: 'stop' },
  // A count
  agrees: { sign: '✓', word: 'AGREES', tone: 'good' },
  differs: { sign: 'X', word: 'DOES NOT AGREE', tone: 'stop' },
  explained: { sign: '✓', word: 'EXPLAINED', tone: 'good' },
  // The first start
  clear: { sign: '✓', word: 'CLEAR', tone: 'good' },
  notClear: { sign: '!', word: 'NOT CLEAR', tone: 'wait' },
  undone: { sign: '<', word: 'UNDONE', tone: 'wait' },
} as const satisfies Record<string, Sign>

/** A sign with its word, as one span: ` ✓ DONE `. */
export function chip({ sign, word, tone }: Sign): Span {
  return { text: ` ${sign} ${word} `, tone }
}

/** The same, filled up so that chips under each other line up. */
export function chipColumn(sign: Sign, width: number): Line {
  const { text, tone } = chip(sign)
  return [
    { text, tone },
    { text: ' '.repeat(Math.max(0, width - text.length)), tone: 'plain' },
  ]
}
