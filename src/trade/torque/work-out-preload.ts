import type { Thread } from '../thread.ts'
import { commonClasses, type FastenerClass } from './fastener-class.ts'
import {
  type FrictionRange,
  impliedPreload,
  type PreloadRange,
  type ProofShare,
  shareOfProof,
} from './preload.ts'
import { questionTorque, type TorqueQuestion } from './torque-question.ts'

/** What a torque is to be worked out for. */
export interface PreloadAsked {
  thread: Thread
  /** Absent where nobody said it: then the common classes of the thread's system are shown. */
  fastenerClass?: FastenerClass
  newtonMetres: number
  /** With its unit: `25 Nm`. */
  typed: string
  friction: FrictionRange
}

/** The preload that a torque implies, or why the thread has none. */
export type WorkedPreload =
  | { isKnown: false; code: 'taper-pipe' | 'pitch-unknown' }
  | {
      isKnown: true
      preload: PreloadRange
      /** Against the class said, or against each of the common ones; empty where the standards do not go so far. */
      shares: { fastenerClass: FastenerClass; share: ProofShare }[]
      /** What is worth asking about the torque; null where nothing is. */
      question: TorqueQuestion | null
    }

/** Works out what a torque clamps with, as a range, and what share of the proof load that is. */
export function workOutPreload(asked: PreloadAsked): WorkedPreload {
  const { thread, fastenerClass, newtonMetres, friction } = asked
  if (thread.system === 'npt') return { isKnown: false, code: 'taper-pipe' }
  const preload = impliedPreload(thread, newtonMetres, friction)
  if (preload === null) return { isKnown: false, code: 'pitch-unknown' }
  const classes = fastenerClass === undefined ? commonClasses(thread) : [fastenerClass]
  return {
    isKnown: true,
    preload,
    shares: classes.flatMap((each) => {
      const share = shareOfProof(thread, each, preload)
      return share === null ? [] : [{ fastenerClass: each, share }]
    }),
    question: questionTorque({ ...asked, thenAngle: false }),
  }
}
