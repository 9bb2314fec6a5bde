import { expect, test } from 'vitest'
import { errorTold } from '../../../src/ui/model/trouble.ts'

test('a part of the program that an update took away is told as that, and not as a fault', () => {
  const gone = Object.assign(new Error("Cannot find module 'dist/errand-1.js'"), {
    code: 'ERR_MODULE_NOT_FOUND',
  })
  expect(errorTold(gone, 'journal.log')).toEqual({
    what: 'putback was installed anew while it was open, and this part of the old one is gone.',
    lines: [],
    cure: 'Leave it and open it again; everything recorded stays recorded.',
  })
  expect(errorTold(new Error('anything else'), 'journal.log')).toBeNull()
})
