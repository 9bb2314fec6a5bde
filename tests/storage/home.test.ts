import { mkdirSync, writeFileSync } from 'node:fs'
import { homedir } from 'node:os'
import { isAbsolute, join, resolve, sep } from 'node:path'
import { expect, test } from 'vitest'
import { jobsHome } from '../../src/storage/home.ts'
import { temporaryFolder } from './support/temporary-folder.ts'

test('the option comes first, then the environment, then a folder right here', () => {
  const cwd = temporaryFolder()
  mkdirSync(join(cwd, 'jobs'))
  const option = join(cwd, 'asked')
  const env = { PUTBACK_HOME: join(cwd, 'set') }
  expect(jobsHome({ option, env, cwd })).toEqual({ path: option, why: 'option' })
  expect(jobsHome({ env, cwd })).toEqual({ path: join(cwd, 'set'), why: 'environment' })
  expect(jobsHome({ env: {}, cwd })).toEqual({ path: join(cwd, 'jobs'), why: 'here' })
})

test('an empty option or variable says nothing', () => {
  const cwd = temporaryFolder()
  mkdirSync(join(cwd, 'jobs'))
  expect(jobsHome({ option: '', env: { PUTBACK_HOME: '' }, cwd }).why).toBe('here')
})

test('relative paths start from where the command runs', () => {
  const cwd = temporaryFolder()
  expect(jobsHome({ option: 'garage', env: {}, cwd }).path).toBe(join(cwd, 'garage'))
  expect(jobsHome({ env: { PUTBACK_HOME: '../garage' }, cwd }).path).toBe(resolve(cwd, '../garage'))
})

test('a file called jobs is no folder of jobs; then it is the user’s own data folder', () => {
  const cwd = temporaryFolder()
  writeFileSync(join(cwd, 'jobs'), '')
  const { path, why } = jobsHome({ env: {}, cwd })
  expect(why).toBe('platform')
  expect(isAbsolute(path)).toBe(true)
  expect(path.split(sep).at(-1)).toBe('jobs')
  expect(path).toContain('putback')
})

// XDG Base Directory Specification 0.8: $XDG_DATA_HOME, or $HOME/.local/share when it is not set.
test.runIf(process.platform === 'linux')('on Linux that is the XDG data folder', () => {
  const { XDG_DATA_HOME } = process.env
  const data = XDG_DATA_HOME || join(homedir(), '.local', 'share')
  expect(jobsHome({ env: {}, cwd: temporaryFolder() }).path).toBe(join(data, 'putback', 'jobs'))
})
