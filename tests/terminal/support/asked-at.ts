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
export function askedAt(line: string): Asked | undefined {
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
