import manifest from '../../package.json' with { type: 'json' }

const help = 'putback: take a machine apart and put every piece back. Options: --help, --version.'

const [first] = process.argv.slice(2)

if (first === '--version' || first === '-v') {
  console.log(manifest.version)
} else if (first === undefined || first === '--help' || first === '-h') {
  console.log(help)
} else {
  console.error(`putback does not know "${printable(first)}". Try: putback --help`)
  process.exitCode = 2
}

/** The text without control characters, so that nothing typed can steer the terminal. */
function printable(text: string): string {
  return text.replace(/\p{Cc}/gu, '')
}
