import { containerOf } from '../ledger/place.ts'
import { contentsByStep } from './contents.ts'
import type { PlanFacts, StepFacts, StepKind, StepWay } from './facts.ts'
import { beneath, buildNeeds, isLast, LAST } from './order.ts'

/** A step of the way back that the kind of thing suggests. It becomes one only when the user takes it. */
export interface Proposal {
  key: string
  title: string
  kind: StepKind
  way: StepWay
  /** Steps that must be built before it. */
  needs: number[]
  /** Steps that need it. */
  before: number[]
  due?: string
  /** Full turns by hand that are counted. */
  turns?: number
}

/**
 * What the record suggests for the way back. Every rule here is common practice; the machine's service
 * manual decides. A step whose title the job already has is not proposed again.
 */
export function proposals(facts: PlanFacts): Proposal[] {
  const contents = contentsByStep(facts)
  const stripped = [...facts.steps.values()].filter((step) => step.way === 'both')
  const taken = new Set([...facts.steps.values()].map((step) => asGoingBack(step.title).toLowerCase()))
  const found: Proposal[] = []
  const timed: StepFacts[] = []
  for (const step of stripped) {
    const inside = contents.get(step.no)
    const text = [step.title, ...(inside?.pieces.map(({ piece }) => piece.name) ?? [])]
      .join(' ')
      .toLowerCase()
    // Nothing can be put in beneath a step that is closed already.
    if (JOINT_FACE.test(text) && step.built !== 'done') found.push(cleanFaces(step))
    if (TIMING_DRIVE.test(text) && !/\bcover\b/i.test(step.title)) timed.push(step)
    for (const fluid of inside?.fluids ?? []) found.push(levelCheck(fluid.name))
    if (
      inside?.pieces.some(({ piece }) => piece.kind === 'connection' && /hose|pipe|line/.test(piece.name))
    ) {
      found.push(LEAK_CHECK)
    }
  }
  if (timed.length > 0) found.push(turnByHand(timed, facts))
  // One that was given another title is the round all the same.
  if (wasPutAway(facts) && ![...facts.steps.values()].some(isLast)) found.push(LAST_ROUND)
  const seen = new Set<string>()
  return found.filter((proposal) => {
    const title = proposal.title.toLowerCase()
    if (taken.has(title) || seen.has(title)) return false
    seen.add(title)
    return true
  })
}

const JOINT_FACE = /\b(gasket|head|cover|sump|pan)\b/
const TIMING_DRIVE = /\b(cam|cams|camshaft|camshafts|timing|sprocket|chain|belt)\b/

/** On the way back nobody takes it off. */
function asGoingBack(title: string): string {
  return title.replace(/\s+(?:off|out|away)$/i, '')
}

function cleanFaces(step: StepFacts): Proposal {
  const title = `Clean the joint faces: ${asGoingBack(step.title)}`
  return { key: `clean ${step.no}`, title, kind: 'clean', way: 'build', needs: [], before: [step.no] }
}

/** Comes after all of the timing drive is back, and before what closes it in. */
function turnByHand(timed: StepFacts[], facts: PlanFacts): Proposal {
  const needs = buildNeeds(facts.steps)
  const drive = new Set(timed.map((step) => step.no))
  const lower = new Set([...drive].flatMap((no) => [...beneath(needs, no)]))
  const before = [...new Set(timed.flatMap((step) => step.after))].filter(
    (no) => !drive.has(no) && !lower.has(no) && facts.steps.get(no)?.built !== 'done',
  )
  return {
    key: 'turn',
    title: 'Turn the crank two full turns by hand, marks line up',
    kind: 'turn',
    turns: 2,
    way: 'build',
    needs: [...drive],
    before,
  }
}

/** Whether anything went into a container since the job began. */
function wasPutAway({ ledger, takenFrom }: PlanFacts): boolean {
  return (
    takenFrom.size > 0 ||
    [...ledger.accounts.values()].some(({ at }) =>
      [...at.keys()].some((place) => containerOf(place) !== null),
    )
  )
}

/** The key of the proposal of a last round. */
export const ROUND = 'round'

/** A piece that was ticked as fitted and still lies in its bag is found by nothing else before the first start. */
const LAST_ROUND: Proposal = {
  key: ROUND,
  title: 'Tip out every bag and tray, look round the bench',
  kind: 'check',
  way: 'build',
  needs: [],
  before: [],
  due: LAST,
}

const LEAK_CHECK: Proposal = {
  key: 'leak',
  title: 'Look for leaks, cold and hot',
  kind: 'check',
  way: 'after-start',
  needs: [],
  before: [],
  due: 'at the first start and after the first warm-up',
}

function levelCheck(fluid: string): Proposal {
  return {
    key: `level ${fluid}`,
    title: `Check the level: ${fluid}`,
    kind: 'check',
    way: 'after-start',
    needs: [],
    before: [],
    due: 'after the first run, cold again',
  }
}
