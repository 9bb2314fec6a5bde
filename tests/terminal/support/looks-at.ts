import type { Hands } from './hands.ts'

/** A line that only asks is answered by the screen that shows it: goes there, by keys where there are some. */
export async function looksAt(hands: Hands, line: string): Promise<void> {
  await hands.clear()
  const asked = askedAt(line)
  if (!asked) return hands.goElsewhere(`${line}\r`)
  await hands.goTo(asked.place, `${asked.keys}\r`)
  if (asked.types && asked.answer) await hands.goTo(asked.answer, `${asked.types}\r`)
  const { choose } = asked
  if (choose && asked.answer) await hands.choose((says) => says.startsWith(choose), asked.answer)
}

/** Where a question that writes nothing is answered on the screens. */
interface Asked {
  /** The keys that lead there, and the screen's name and title there. */
  keys: string
  place: RegExp
  /** What is chosen or typed there to come to the answer, and its title. */
  choose?: string
  types?: string
  answer?: RegExp
}

/** The screen that answers a line; undefined where the line itself leads to it. */
function askedAt(line: string): Asked | undefined {
  const [, where] = /^where (.*)$/.exec(line) ?? []
  if (where !== undefined)
    return { keys: '.2', place: /\[\.2 LIES\]/, types: where, answer: new RegExp(`found for ${where}`) }
  return ASKED.get(line.replace(/ \d+$/, ''))
}

const NOW = { keys: '.', place: /\[\. NOW\]/ }

const ASKED = new Map<string, Asked>([
  ['card', NOW],
  ['back', { keys: '.3', place: /WHAT GOES BACK/ }],
  ['left', { keys: '.4', place: /\[\.4 LEFT\]/ }],
  ['log', { keys: '.5', place: /\[\.5 LOG\]/ }],
  ['due', { keys: '.6', place: /WHAT IS DUE/ }],
  ['finish', { ...NOW, choose: 'when it is together', answer: /WHEN IT IS TOGETHER/ }],
  [
    'proposals',
    { ...NOW, choose: 'see what else the way back asks for', answer: /WHAT ELSE THE WAY BACK ASKS FOR/ },
  ],
])
