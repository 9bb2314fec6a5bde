import { countKeys } from '../keys/count-keys.ts'
import { countMistakes } from '../keys/count-mistakes.ts'

// One whole job from a seed at the screens, without a mistake and then with so many; says what was pressed.
const [seed = 0, mistakes = 20] = process.argv.slice(2).map(Number)
process.stdout.write(
  `${JSON.stringify({ ...countKeys(seed), withMistakes: countMistakes(seed, mistakes) })}\n`,
)
