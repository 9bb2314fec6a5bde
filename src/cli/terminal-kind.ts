/** What the environment says of the terminal; nothing of it is known for sure. */
type Environment = Readonly<Record<string, string | undefined>>

/** Whether the terminal can place its cursor. One without a name is believed to only on Windows, where none has one. */
export function canBeDrawnOn({ TERM }: Environment, platform: string = process.platform): boolean {
  return TERM ? !WRITES_ON.has(TERM) : platform === 'win32'
}

/** Names of terminals that can only write on. */
const WRITES_ON = new Set(['dumb', 'unknown', 'network', 'dialup'])

/** Whether colours are wanted; NO_COLOR as https://no-color.org has it: set, and not empty. */
export function wantsColour({ NO_COLOR, FORCE_COLOR, TERM }: Environment): boolean {
  return !NO_COLOR && FORCE_COLOR !== '0' && FORCE_COLOR !== 'false' && TERM !== 'dumb'
}
