/**
 * A line of text as it may go to a terminal, whatever it holds: without controls, line ends, format characters (which hide,
 * or turn the reading order) and halves of characters. Nothing else is changed, so that a path can still be copied.
 */
export function withoutSteering(text: string): string {
  return text.replace(ALL_STEERING, '')
}

/** Controls, format characters and halves of characters, and the two that end a line in some programs only. */
export const STEERING = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u
const ALL_STEERING = new RegExp(STEERING, 'gu')
