import { simulate } from '../simulate.ts'

// Whole jobs from seeds, with so many mistakes in each, in a program of its own; says what they came to.
const [from = 0, to = 0, mistakes = 0] = process.argv.slice(2).map(Number)
process.stdout.write(`${JSON.stringify(simulate({ from, to, mistakes }))}\n`)
