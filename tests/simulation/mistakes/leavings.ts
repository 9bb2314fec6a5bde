import type { Act } from '../job/act.ts'
import type { Known } from '../job/known.ts'
import { act } from '../job/strip-acts.ts'
import type { Thing } from '../machines/machine.ts'
import type { Made } from './classes.ts'
import { type Omitted, ofOmissions, type Share } from './shares.ts'

/** Something that can be left out: of the acts from a place on, which are not done. */
export interface Leaving extends Share {
  what: string
  made(acts: readonly Act[], place: number): Made | null
}

/** All that can be left out on the way. What of it is said to be done all the same is told by others. */
export const LEAVINGS: readonly Leaving[] = [
  leaving('fastener', 'fasteners undone or incomplete', 0.4, oneFastener),
  leaving('fasteners not tightened', 'fasteners undone or incomplete', 0.3, allTurns),
  leaving('bolt not turned in one pass', 'fasteners undone or incomplete', 0.2, oneTurn),
  leaving('whole pass', 'fasteners undone or incomplete', 0.1, onePass),
  leaving(
    'pin, plug or rag not taken out',
    'items left locked, pins not removed',
    1,
    one((each) => each.doing === 'take out' && isAid(each) && !isTool(each)),
  ),
  leaving(
    'cap or cover',
    'caps loose or missing',
    1,
    one((each) => isFit(each) && each.thing?.kind === 'part' && each.thing.isCap),
  ),
  leaving(
    'hose end',
    'items loose or disconnected',
    1,
    one((each) => isFit(each) && each.thing?.kind === 'hose'),
  ),
  leaving(
    'gasket, washer or seal',
    'spacers, washers, seals missing',
    0.8,
    one((each) => isFit(each) && each.thing?.kind === 'part' && each.thing.isSingleUse),
  ),
  leaving(
    'tool not put back',
    'tools or spare fasteners left in',
    1,
    one((each) => each.doing === 'take out' && isTool(each)),
  ),
  leaving(
    'oil, locker or sealant',
    'no lubrication',
    1,
    one((each) => each.doing === 'put on'),
  ),
  leaving('whole step', 'panels left off', 1, wholeStep),
  leaving(
    'matched piece',
    'the rest',
    0.15,
    one((each) => isFit(each) && each.thing?.kind === 'set'),
  ),
  leaving(
    'part',
    'the rest',
    0.15,
    one((each) => isFit(each) && each.thing?.kind === 'part' && !each.thing.isCap && !each.thing.isSingleUse),
  ),
  leaving(
    'part not judged',
    'the rest',
    0.11,
    one((each) => each.doing === 'judge'),
  ),
  leaving(
    'mark not confirmed',
    'the rest',
    0.11,
    one((each) => each.doing === 'confirm'),
  ),
  leaving(
    'fluid not filled',
    'the rest',
    0.11,
    one((each) => each.doing === 'fill'),
  ),
  leaving(
    'last look',
    'the rest',
    0.06,
    one((each) => each.doing === 'look'),
  ),
  leaving(
    'added step',
    'the rest',
    0.06,
    one((each) => each.doing === 'extra'),
  ),
]

function leaving(what: string, kind: Omitted, part: number, made: Leaving['made']): Leaving {
  return { what, ...ofOmissions(kind, part), made }
}

function isFit({ doing }: Act): boolean {
  return doing === 'fit'
}

function isAid({ thing }: Act): boolean {
  return thing?.kind === 'aid'
}

function isTool({ thing }: Act): boolean {
  return thing?.kind === 'aid' && thing.where === null
}

/** One act that is not done. */
function one(isOne: (act: Act) => boolean): Leaving['made'] {
  return (acts, place) => {
    const left = acts[place]
    if (!left || !isOne(left)) return null
    return {
      acts: 1,
      says: () => [],
      cure: [left],
      subjects: (known) => subjectsOf(left, known),
      lies: liesOf(left),
      shows: (act) => isSecondLook(act, left),
      // "Look again at some of them from the last to the first."
      askedBy: left.thing?.kind === 'set' || left.thing?.kind === 'hose' ? ['repeated'] : [],
    }
  }
}

/** Of alike ones one stays in the bag. */
function oneFastener(acts: readonly Act[], place: number): Made | null {
  const left = acts[place]
  if (!left || !isFit(left) || left.thing?.kind !== 'lot') return null
  const { thing } = left
  const single = one(() => true)(acts, place)
  if (thing.at !== null || thing.count < 2) return single
  return {
    ...(single as Made),
    says: () => [`fit ${thing.count - 1} ${thing.name}`],
    cure: [act('fit', left.step, () => `fit 1 ${thing.name}`, thing)],
  }
}

function allTurns(acts: readonly Act[], place: number): Made | null {
  const first = acts[place]
  if (first?.doing !== 'turn' || first.pass !== 0 || first.at !== '0') return null
  return turnsFrom(acts, place, ({ thing }) => thing === first.thing)
}

function onePass(acts: readonly Act[], place: number): Made | null {
  const first = acts[place]
  if (first?.doing !== 'turn' || first.at !== '0') return null
  if (first.thing?.kind !== 'lot' || (first.thing.passes?.kinds.length ?? 0) < 2) return null
  return turnsFrom(acts, place, ({ thing, pass }) => thing === first.thing && pass === first.pass)
}

function oneTurn(acts: readonly Act[], place: number): Made | null {
  const first = acts[place]
  if (first?.doing !== 'turn') return null
  return turnsFrom(acts, place, (each) => each === first)
}

function turnsFrom(acts: readonly Act[], place: number, isOne: (act: Act) => boolean): Made {
  const cure = run(acts, place, (each) => each.doing === 'turn' && isOne(each))
  const last = cure.at(-1) as Act
  const { thing } = last
  const passes = thing?.kind === 'lot' ? (thing.passes?.kinds.length ?? 0) : 0
  // A wrench set to the last torque does not tell whether a bolt went through the passes before.
  const isFelt = last.pass === passes - 1
  return {
    acts: cure.length,
    says: () => [],
    cure,
    subjects: (known) => subjectsOf(last, known),
    shows: (act) => isFelt && act.doing === 'see again' && act.thing === thing && act.at === 'passes',
  }
}

/** From taking it up, or the last look before it, to closing it and seeing it again. */
function wholeStep(acts: readonly Act[], place: number): Made | null {
  const first = acts[place]
  const isFirst = first?.doing === 'look' || (first?.doing === 'take' && acts[place - 1]?.doing !== 'look')
  if (!first || !isFirst) return null
  const cure = run(acts, place, ({ step }) => step === first.step)
  return {
    acts: cure.length,
    says: () => [],
    cure,
    // Where nothing of it was done, the first of it that is seen leads to the rest.
    lies: cure.flatMap((each) => (isFit(each) ? (liesOf(each) ?? []) : []))[0],
    subjects: (known) => [
      `step ${first.step}`,
      ...cure.filter(isFit).flatMap((each) => subjectsOf(each, known)),
    ],
  }
}

function run(acts: readonly Act[], place: number, isOne: (act: Act) => boolean): Act[] {
  const rest = acts.slice(place)
  const end = rest.findIndex((each) => !isOne(each))
  return end < 0 ? rest : rest.slice(0, end)
}

/** Whether some of it is not on yet: what is on already no hand takes for another. */
export function isStillOff(thing: Thing, acts: readonly Act[], place: number): boolean {
  return acts.slice(place).some((each) => isFit(each) && each.thing === thing)
}

/** Under which ids the record knows what an act is about. */
export function subjectsOf({ doing, step, thing, at }: Act, known: Known): string[] {
  if (!thing) return [`step ${step}`]
  if (doing === 'scan') return [...known.everyPiece(thing)]
  if (doing === 'turn') return present(known.tightenings.get(thing)?.id)
  if (doing === 'judge') return known.checks.get(thing) ?? []
  if (doing === 'confirm') return [known.mark(thing, at)]
  if (thing.kind === 'put-on') return present(known.consumables.get(thing))
  if (thing.kind === 'fluid') return present(known.fluids.get(thing))
  return [known.piece(thing, at)]
}

function present(id: string | undefined): string[] {
  return id === undefined ? [] : [id]
}

/** Where it is all the same: in the bag, on the bench, or not in the toolbox. A hose end hangs on its hose, and is in no bag. */
function liesOf({ doing, thing, at }: Act): Made['lies'] {
  if (!thing) return undefined
  if (doing === 'take out') return { thing, at }
  const isTipped = thing.kind === 'lot' || thing.kind === 'set' || thing.kind === 'part'
  return doing === 'fit' && isTipped ? { thing, at } : undefined
}

/** Whether who looks a second time sees that it was not done. What is clamped between two faces nobody sees. */
function isSecondLook(act: Act, { doing, thing, at }: Act): boolean {
  if (act.doing !== 'see again' || act.thing !== thing || thing === undefined) return false
  if (doing === 'confirm') return act.at === markAt(at)
  if (doing !== 'fit' || (thing.kind === 'part' && thing.isSingleUse)) return false
  return thing.kind === 'lot' ? act.at === undefined : act.at === at
}

function markAt(at: string | undefined): string {
  return `mark ${at ?? ''}`
}
