import { statSync } from 'node:fs'
import { join, resolve } from 'node:path'
import envPaths from 'env-paths'

/** Where the jobs live and who says so. */
export interface JobsHome {
  path: string
  why: 'option' | 'environment' | 'here' | 'platform'
}

export interface HomeSources {
  /** What the user gave with this command. */
  option?: string | undefined
  env: { PUTBACK_HOME?: string | undefined }
  cwd: string
}

/** The folder of the jobs, absolute: as asked, else a folder `jobs` right here, else the user's own data folder. */
export function jobsHome({ option, env, cwd }: HomeSources): JobsHome {
  if (option) return { path: resolve(cwd, option), why: 'option' }
  if (env.PUTBACK_HOME) return { path: resolve(cwd, env.PUTBACK_HOME), why: 'environment' }
  const here = join(cwd, 'jobs')
  if (statSync(here, { throwIfNoEntry: false })?.isDirectory()) return { path: here, why: 'here' }
  return { path: join(envPaths('putback', { suffix: '' }).data, 'jobs'), why: 'platform' }
}
