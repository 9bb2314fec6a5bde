import type { Screen } from '../navigation.ts'
import type { Page } from '../page.ts'
import { pageOf } from './page-of.ts'
import type { Hall, Scene } from './scene.ts'

/**
 * The page of a screen, worked out once as long as nothing changes that it shows: a key that only makes the line longer
 * costs the same in a job of ten pieces and of ten thousand. A page that looks at the line follows it.
 */
export class KeptPage {
  #kept: { page: Page; shows: readonly unknown[]; typed: string | null } | null = null

  /** `times`: what the times that run say now. */
  of(scene: Hall | Scene, screen: Screen, times: string): Page {
    // Of the jobs only the disk knows.
    if (!('session' in scene) || screen.at === 'jobs') return pageOf(scene, screen)
    const shows = [screen, times, ...shownOf(scene)]
    const kept = this.#kept
    if (kept && isAlike(kept.shows, shows) && (kept.typed === null || kept.typed === scene.typed))
      return kept.page
    const line = watchLine(scene)
    const page = pageOf(scene, screen)
    this.#kept = { page, shows, typed: line.wasSeen ? line.typed : null }
    return page
  }
}

/** All that a page may look at beside the line, to the minute. */
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

/** Notes whether somebody looks at the line of a scene. */
function watchLine(scene: Scene): { typed: string; wasSeen: boolean } {
  const { typed } = scene
  const line = { typed, wasSeen: false }
  Object.defineProperty(scene, 'typed', {
    enumerable: true,
    get: () => {
      line.wasSeen = true
      return typed
    },
  })
  return line
}
