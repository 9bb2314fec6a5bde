import { cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import { emptyHome, say, sendTo, shelfIn } from './bench.ts'
import { SCREEN_JOBS, type ScreenJob } from './screen-jobs.ts'

/** A home of its own with a job in it, which is told once however many tests ask for it. */
export function homeWith(job: ScreenJob): { home: string; path: string } {
  const home = emptyHome()
  const path = told.get(job) ?? tell(job)
  cpSync(path, join(home, basename(path)), { recursive: true })
  return { home, path: join(home, basename(path)) }
}

const told = new Map<ScreenJob, string>()

function tell(job: ScreenJob): string {
  const home = mkdtempSync(join(tmpdir(), 'putback-told-'))
  process.on('exit', () => rmSync(home, { recursive: true, force: true }))
  const shelf = shelfIn(home)
  const path = shelf.create({ name: 'blue twin', machine: 'invented twin-cam twin', units: 'metric' })
  const session = shelf.open(path)
  for (const each of SCREEN_JOBS[job]) typeof each === 'string' ? say(session, each) : sendTo(session, each)
  told.set(job, path)
  return path
}
