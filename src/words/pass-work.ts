import type { Pass } from '../plan/tightening.ts'

/** What hands do to a fastener in a pass: `turn`, `mark`, `back off`, `check`. */
export function passVerb({ kind }: Pass): string {
  switch (kind) {
    case 'witness':
      return 'mark'
    case 'back-off':
      return 'back off'
    case 'check':
      return 'check'
    case 'snug':
    case 'torque':
    case 'angle':
      return 'turn'
    default:
      return kind satisfies never
  }
}

/** That it was done: `3 of 8 turned`, `marked`, `backed off`, `checked`. */
export function passDone(pass: Pass): string {
  return pass.kind === 'back-off' ? 'backed off' : `${passVerb(pass)}ed`
}
