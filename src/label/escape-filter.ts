/**
 * A filter for terminal escape sequences (ECMA-48) in typed input, one character at a time, so that it does not
 * matter how the input was cut into chunks. The function returned takes one character and gives back the
 * characters to keep: none inside a sequence.
 *
 * The two marks of a bracketed paste are kept as the text `[200~` and `[201~`, without their ESC: an input
 * library may have taken the ESC off already, so the reader must know them by that text anyway.
 * An unfinished OSC or DCS string ends with the line, and takes its Enter along: what stood before that Enter is gone.
 * A control sequence that a line ends instead gives back what it took, for it may be a scan.
 */
export function escapeFilter(): (character: string) => string {
  let inside: 'text' | 'escape' | 'control' | 'shift' | 'bracket' | 'string' | 'string escape' = 'text'
  let parameters = ''

  function take(character: string): string {
    switch (inside) {
      case 'text':
        return plain(character)
      case 'escape':
        return afterEscape(character)
      case 'control':
        if (character >= ' ' && character <= '?') {
          parameters += character
          return ''
        }
        inside = 'text'
        if ('\t\r\n'.includes(character)) return parameters + character
        if (character < '@' || character > '~') return plain(character)
        return character === '~' && /^20[01]$/.test(parameters) ? `[${parameters}~` : ''
      case 'shift':
        inside = 'text'
        return character >= ' ' && character <= '~' ? '' : plain(character)
      case 'bracket':
        // An OSC begins with a number. ESC pressed before a scan with a symbology identifier ("]Q3") does not.
        inside = /[0-9]/.test(character) ? 'string' : 'text'
        return inside === 'string' ? '' : `]${plain(character)}`
      case 'string':
        if (character === '\x1b') inside = 'string escape'
        else if ('\x07\x9c\r\n'.includes(character)) inside = 'text'
        return ''
      case 'string escape':
        inside = 'text'
        return character === '\\' ? '' : afterEscape(character)
    }
  }

  function plain(character: string): string {
    if (character === '\x1b') inside = 'escape'
    else if (character === '\x9b') startControl()
    else if ('\x90\x98\x9d\x9e\x9f'.includes(character)) inside = 'string'
    else return character
    return ''
  }

  function afterEscape(character: string): string {
    inside = 'text'
    if (character === '[') startControl()
    else if (character === 'O') inside = 'shift'
    else if (character === ']') inside = 'bracket'
    else if ('PX^_'.includes(character)) inside = 'string'
    else return plain(character) // ESC alone, or Alt with a key: the key still counts.
    return ''
  }

  function startControl(): void {
    inside = 'control'
    parameters = ''
  }

  return take
}
