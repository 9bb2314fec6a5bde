import fc from 'fast-check'
import { expect, test } from 'vitest'
import { numberedSlug, slugOf } from '../../src/storage/job-slug.ts'

test.each([
  ['The blue twin', 'the-blue-twin'],
  ['  Gearbox, 2nd time!  ', 'gearbox-2nd-time'],
  ['Bernd’s Ölpumpe & Straße', 'bernds-olpumpe-strasse'],
  ['Łódź Ærø İzmir', 'lodz-aero-izmir'],
  ['mower №5 ½', 'mower-no5-1-2'],
  ['двигатель', 'job'],
  ['двигатель 3', '3'],
  ['../../etc/passwd', 'etc-passwd'],
  ['', 'job'],
  ['---', 'job'],
  ['🔧', 'job'],
  ['CON', 'job-con'],
  ['lpt1', 'job-lpt1'],
  ['com¹', 'job-com1'],
  ['console', 'console'],
  ['Backups', 'job-backups'],
  ['backups 2', 'backups-2'],
  ['com10', 'com10'],
  ['a very long name for a very small machine indeed', 'a-very-long-name-for-a-very-small-machin'],
  [`${'x'.repeat(39)}-y`, 'x'.repeat(39)],
])('%j is kept as %s', (name, slug) => {
  expect(slugOf(name)).toBe(slug)
})

// The device names are those of Microsoft's "Naming Files, Paths, and Namespaces", here from memory.
test('any name gives a folder name that every system takes, and that stays as it is', () => {
  fc.assert(
    fc.property(
      fc.string({ unit: 'binary', maxLength: 80 }),
      fc.integer({ min: 2, max: 9999 }),
      (name, number) => {
        for (const slug of [slugOf(name), numberedSlug(slugOf(name), number)]) {
          expect(slug).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/)
          expect(slug.length).toBeLessThanOrEqual(40)
          expect(slug).not.toMatch(/^(con|prn|aux|nul|com[0-9]|lpt[0-9])$/)
          expect(slugOf(slug)).toBe(slug)
        }
      },
    ),
  )
})
