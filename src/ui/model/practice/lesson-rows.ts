import type { Line } from '../../text/line.ts'
import type { Hall, Scene } from '../scene.ts'

/** What the practice job says above every screen; nothing in any other job. */
export function lessonRows(_scene: Hall | Scene): Line[] {
  return []
}
