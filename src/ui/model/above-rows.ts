import type { Screen } from '../navigation.ts'
import type { Page } from '../page.ts'
import { chip, SIGNS } from '../signs.ts'
import { type Line, line, widthOf, wrap } from '../text/line.ts'
import { lessonRows } from './practice/lesson-rows.ts'
import type { Hall, Scene } from './scene.ts'

/** What stands above every screen of a job: that it is out of date, or what the practice job says. */
export function aboveRows(scene: Hall | Scene, screen: Screen, page: Page): Line[] {
  return [...outOfDateRows(scene), ...lessonRows(scene, screen, page)]
}

/** A newer program went on with the job: whatever is shown may have changed since, so every screen says it. */
function outOfDateRows(scene: Hall | Scene): Line[] {
  if (!('session' in scene)) return []
  const { problem } = scene.session
  if (problem?.kind !== 'newer') return []
  const before = line(chip(SIGNS.outOfDate), ' ')
  const says = `This is how the job stood before entry ${problem.line}. A newer putback went on with it: open it with that.`
  return wrap(line(...before, says), scene.width, widthOf(before))
}
