/** Other ways to write a line, shorter ones first; what each of them means is asked of the screen where it is typed. */
export function wordings(line: string): string[] {
  const shorter = new Set([line])
  // On the screen OFF what comes off needs no verb, and what is in hand no place; an order that is usual needs no word.
  for (const part of LEFT_AWAY)
    for (const each of [...shorter]) if (part.test(each)) shorter.add(each.replace(part, ''))
  for (const each of [...shorter]) shorter.add(each.replace(', single-use', ' new'))
  for (const each of [...shorter]) for (const short of onNumberPad(each)) shorter.add(short)
  return [...shorter].sort((a, b) => a.length - b.length)
}

const LEFT_AWAY = [
  /^off /,
  / into (?:new bag|tray \d+|bench)$/,
  /, (?:hides|does not hide)$/,
  /, (?:free|after [\d,]+)/,
  /(?<=^fit )\d+ /,
  // A drawing takes its form alone.
  /^layout [^:]+: /,
  // A mark on a piece of a set is known by its position.
  /(?<=^mark )[\w ]+ (?=[A-Z]\d+: )/,
]

/** Counts and amounts alone: `8.2` of what came off before or of a row, `2.1` of a fluid. */
function onNumberPad(line: string): string[] {
  const [, count] = /^(?:fit )?(\d+) /.exec(line) ?? []
  // A reason that was given before is known by its number.
  const [because] = /^.* because /.exec(line) ?? []
  const [amount] = /\d+\.\d+(?= L$)/.exec(line) ?? []
  return [
    ...(count === undefined ? [] : ['', '2', '3', '4'].map((row) => `${count}.${row}`)),
    ...(amount === undefined ? [] : [amount]),
    ...(because === undefined ? [] : ['1', '2', '3', '4'].map((no) => because + no)),
  ]
}

/** What may be left to type of a line where the screen put words before it and behind it. */
export function restsOf(line: string, before: string, after: string): string[] {
  // A cure stands there whole.
  if (before !== '' && verbOf(before) !== verbOf(line)) return ['']
  const all = wordings(line.replace(/ into bench$/, ' onto the bench'))
  const ends = before === '' ? all : ['', ...all.flatMap(endsOf)]
  const left = ends.filter((end) => end.endsWith(after)).map((end) => end.slice(0, end.length - after.length))
  return [...new Set(left)].sort((a, b) => a.length - b.length)
}

/** The word that a line begins with. */
export function verbOf(line: string): string {
  return /^\w*/.exec(line)?.[0] ?? ''
}

function endsOf(line: string): string[] {
  const words = line.split(' ')
  return words.map((_, at) => words.slice(at).join(' '))
}
