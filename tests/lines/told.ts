import type { Command } from '../../src/journal/command.ts'
import type { State } from '../../src/journal/state.ts'
import { readLine } from '../../src/lines/read-line.ts'
import { given, openJob, record } from '../support/journal.ts'

/** The state of a job told in lines. Throws on a line that is no command, or whose command is refused. */
export function told(...lines: string[]): State {
  let { state, entries } = given()
  for (const line of lines) ({ state, entries } = record(commandsOf(line, state), entries))
  return state
}

/** The commands of a line that must be understood. */
function commandsOf(line: string, state: State): Command[] {
  const reading = readLine(line, state)
  if (reading.kind !== 'commands') throw new Error(`not commands: ${line}: ${JSON.stringify(reading)}`)
  return reading.commands
}

/** A state with no job in it: nothing to name yet. */
export const nothing: State = record([openJob]).state

/** The top end of an invented engine on the bench: something of every kind for lines to name. */
export const topEnd: readonly string[] = [
  'begin valve cover off',
  'bag valve cover',
  'off 8 M6x25 hex 10 valve cover bolts into bag 1',
  'shelf above the bench',
  'off valve cover into bench',
  'off coolant hose: radiator > pump',
  'off left vacuum hose: throttle 1 > left tap',
  'off right vacuum hose: throttle 2 > right tap',
  'off coolant out 2.1 L',
  'begin camshafts off',
  'off cam caps I1..I4 into new tray 12 slots',
  'mark I3: arrow to the chain',
  'off shims E1..E4 into new tray 8 slots',
  'tool: crank locking pin',
  'off rags > inlet ports 1..2',
  'begin cylinder head off',
  'off 8 M10x140 E14 head bolts, single-use into new bag',
  'off 3 M8 exhaust studs, 1 snapped into bag 5',
  'off cylinder head into bench',
  'off head gasket, new into bench',
  'end',
]
