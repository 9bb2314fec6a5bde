import { BROKEN_OFF } from './broken-off.ts'
import type { MistakeClass } from './classes.ts'
import { NEVER_WRITTEN } from './never-written.ts'
import { OMISSIONS } from './omissions.ts'
import { OTHERS } from './others.ts'
import { TICKED } from './ticked.ts'
import { WRONG_PARTS } from './wrong-parts.ts'
import { WRONG_PLACES } from './wrong-places.ts'

/** Every kind of mistake that is made. */
export const ALL_MISTAKES: readonly MistakeClass[] = [
  ...OMISSIONS,
  ...TICKED,
  ...WRONG_PLACES,
  ...WRONG_PARTS,
  ...OTHERS,
  ...NEVER_WRITTEN,
  ...BROKEN_OFF,
]
