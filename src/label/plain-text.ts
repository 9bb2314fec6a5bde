/**
 * Text from outside (typed, scanned, imported) as it may be stored and shown in a terminal: one line, at most
 * 500 characters (code points), in Unicode NFC, without anything that moves the cursor, changes colours, turns
 * the reading order or hides. White space collapses to single spaces. Applying it twice changes nothing more.
 *
 * Invisible characters all go, the zero width joiner of emoji among them: two names that look alike must be the
 * same name, and terminals do not agree on the width of joined emoji, so a joined one falls apart into its parts.
 */
export function plainText(text: string): string {
  const visible = text.replace(sequences, '').replace(controls, '').replace(hidden, '')
  const line = visible.replace(loneSurrogates, '\ufffd').replace(whiteSpace, ' ').normalize('NFC').trim()
  const kept = [...line].slice(0, MOST_CHARACTERS)
  // Never shorter than that: by its length it can be told that something was cut off.
  if (kept.length === MOST_CHARACTERS && kept.at(-1) === ' ') kept[MOST_CHARACTERS - 1] = '…'
  return kept.join('')
}

const MOST_CHARACTERS = 500

// ECMA-48 sequences, seven-bit and eight-bit: control sequences (CSI); strings (OSC, DCS, SOS, PM, APC) with their
// payload up to BEL or ST; and ESC with a final byte. An unfinished string runs to the end of its line after an
// ESC, but not after an eight-bit control: that is more often a quotation mark in text decoded wrongly.
const sequences = new RegExp(
  [
    '(?:\\x1b\\[|\\x9b)[0-?]*[ -/]*[@-~]?',
    '\\x1b[\\]PX^_][^\\x07\\x1b\\x9c\\r\\n]*(?:\\x07|\\x9c|\\x1b\\\\)?',
    '[\\x9d\\x90\\x98\\x9e\\x9f][^\\x07\\x1b\\x9c\\r\\n]*(?:\\x07|\\x9c|\\x1b\\\\)',
    '\\x1b[ -/]*[0-~]?',
  ].join('|'),
  'g',
)
// All but those that are white space: tab, line feed, vertical tab, form feed, return, next line.
const controls = /[^\P{Cc}\t-\r\x85]/gu
// Joiners, bidirectional controls, soft hyphens, fillers, variation selectors, tags; and interlinear annotation.
const hidden = /\p{Default_Ignorable_Code_Point}|[\ufff9-\ufffb]/gu
const loneSurrogates = /\p{Cs}/gu
const whiteSpace = /[\s\x85]+/g
