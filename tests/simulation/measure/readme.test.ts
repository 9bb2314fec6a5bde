import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { auditFindings } from './audit-findings.ts'
import { findingsIn } from './in-readme.ts'

// Written by `PUTBACK_WRITE=1 npm run bench:mistakes` from what it counted, and by nobody's hand.
test('what the README says of the simulation agrees with itself', () => {
  expect(auditFindings(findingsIn(readFileSync('README.md', 'utf8')))).toEqual([])
})

test('the command that it names is there', () => {
  expect(JSON.parse(readFileSync('package.json', 'utf8')).scripts['bench:mistakes']).toBe(
    'node bench/run.mjs mistakes',
  )
})
