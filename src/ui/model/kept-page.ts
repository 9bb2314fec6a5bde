import type { Screen } from '../navigation.ts'
import type { Page } from '../page.ts'
import { followsLine, pageOf } from './page-of.ts'
import type { Hall, Scene } from './scene.ts'

/**
 * The page of a screen, worked out once as long as nothing changes that it shows: a key that only makes the line longer
 * costs the same in a job of ten pieces and of ten thousand.
 */
export class KeptPage {
  #kept: { page: Page; shows: readonly unknown[] } | null = null

  /** `typed`: what stands in the line; `times`: what the times that run say now. */
  of(scene: Hall | Scene, screen: Screen, { typed, times }: { typed: string; times: string }): Page {
    // Of the jobs only the disk knows.
    if (!('session' in scene) || screen.at === 'jobs') return pageOf(scene, screen, typed)
    const shows = [screen, followsLine(screen) ? typed : null, times, ...shownOf(scene)]
    if (this.#kept && isAlike(this.#kept.shows, shows)) return this.#kept.page
    const page = pageOf(scene, screen, typed)
    this.#kept = { page, shows }
    return page
  }
}

/** All else that a page may look at, to the minute. */
function shownOf({ session, hand, width, height, now, errand }: Scene): unknown[] {
  const minute = Math.floor(now.getTime() / 60_000)
  return [
    session,
    session.version,
    session.gates(),
    hand,
    width,
    height,
    minute,
    errand.progress,
    errand.last,
  ]
}

function isAlike(one: readonly unknown[], other: readonly unknown[]): boolean {
  return one.length === other.length && one.every((value, index) => value === other[index])
}
