import { findsOut } from '../../session/finds-out.ts'
import { isLastRound } from '../../session/last-round.ts'
import { aidInTheWay, type PlanRow, type Todo } from '../../session/views.ts'
import { fastenerCalled, onTheWayBack, stepName } from '../../words/names.ts'
import { containerName } from '../../words/places.ts'
import type { Command } from '../act.ts'
import { type Choice, goTo } from '../page.ts'
import { nextChoice, takeUp, todoText } from './next.ts'
import type { Scene, State } from './scene.ts'
import { stillToTip } from './tip-rows.ts'

/** What can be done in a step under way, in the order of its numbers; a bolt in doubt has two answers. */
export function stepChoices(state: State, step: PlanRow['step'], todo: readonly Todo[]): Choice[] {
  return [...todo.flatMap((each) => answersTo(state, step.no, each)), ...closing(step, todo)]
}

/** What Enter does on a step's page: the next thing of one under way, the next sensible thing of any other. */
export function stepEnter(scene: Scene, row: PlanRow, todo: readonly Todo[]): Choice | null {
  return row.standing === 'underway' ? enterOpen(scene, row, todo) : enterClosed(scene, row)
}

function answersTo(state: State, no: number, each: Todo): Choice[] {
  if (each.kind !== 'turn') return [doIt(state, no, each)]
  if (!each.next.suspect) return [doIt(state, no, each), ...noTorque(each)]
  const { tightening, next } = each
  return (['yes', 'no'] as const).map((answer) => ({
    says: `${answer}, ${fastenerCalled(next.fastener)} was ${answer === 'yes' ? '' : 'not '}turned: say what shows it`,
    act: {
      do: 'write',
      before: `turned ${tightening.id} ${answer} because `,
      asks: `Type what shows it, as: the paint mark has ${answer === 'yes' ? '' : 'not '}moved`,
    },
  }))
}

/** What else can come of turning a bolt to a torque. */
function noTorque({ tightening, next }: Extract<Todo, { kind: 'turn' }>): Choice[] {
  const pass = tightening.passes[next.pass]
  if (!pass || !('newtonMetres' in pass)) return []
  return [
    {
      says: `${fastenerCalled(next.fastener)} does not come to its torque: say what it does`,
      act: {
        do: 'write',
        before: `no torque ${next.fastener} of ${tightening.id} because `,
        asks: 'Type what it does, as: it keeps turning',
      },
    },
  ]
}

/** What doing one thing of a step means. What needs a value or a reason goes into the line to be completed. */
function doIt(state: State, step: number, todo: Todo): Choice {
  const says = todoText(state, todo)
  const send = (command: Command): Choice => ({ says, act: { do: 'send', commands: [command] } })
  switch (todo.kind) {
    case 'take-out':
      return send({
        do: 'move',
        piece: todo.account.piece.id,
        count: todo.count,
        from: 'machine',
        into: { kind: 'place', place: 'toolbox' },
      })
    case 'fit': {
      const { piece, home } = todo.account
      const fit = send({ do: 'fit', step, fittings: [{ piece: piece.id, position: home.position }] })
      return home.position === undefined ? { ...fit, fits: todo.owed } : fit
    }
    case 'confirm':
      return send({ do: 'confirm', mark: todo.mark.id })
    case 'turn': {
      const { tightening, next } = todo
      // In doubt nobody but the user can know: no key answers for them.
      return next.suspect
        ? inDoubt(fastenerCalled(next.fastener))
        : send({ do: 'tighten', tightening: tightening.id, fastener: next.fastener })
    }
    case 'settle':
      return {
        says: `${says}: say how`,
        act: {
          do: 'write',
          before: `settle ${todo.fault.id}: `,
          asks: 'Type how it was put right, as: thread insert fitted, new bolt',
        },
      }
    case 'turn-over':
      return send({ do: 'turn-over', step })
    case 'apply':
      return send({ do: 'apply', consumable: todo.consumable.id })
    case 'fill':
      return {
        says: `${says}: say how much`,
        act: { do: 'write', before: `fill ${todo.fluid.name} `, asks: 'Type how much went in, as: 2.1 L' },
      }
    default:
      return todo satisfies never
  }
}

function inDoubt(fastener: string): Choice {
  return {
    says: `say whether ${fastener} was turned`,
    act: {
      do: 'say',
      what: `Was ${fastener} turned before the work broke off?`,
      cure: 'Look at it, then choose yes or no by number, and say what shows it.',
    },
  }
}

/** The two ways in which a step that finds something out can end. */
function closing(step: PlanRow['step'], todo: readonly Todo[]): Choice[] {
  if (!findsOut(step)) return []
  return todo.length === 0 ? [passes(step.no), fails(step.no)] : [fails(step.no)]
}

function passes(no: number): Choice {
  return {
    says: 'it passes: say what was found, or Enter again',
    act: { do: 'write', before: `done ${no}: `, asks: 'Type what was found, or Enter as it is.' },
  }
}

function fails(no: number): Choice {
  return {
    says: 'it does not: say what was found',
    act: {
      do: 'write',
      before: `fail ${no}: `,
      asks: 'Type what was found; ", reopen 3" behind it opens step 3 again.',
    },
  }
}

function enterOpen({ session }: Scene, { step }: PlanRow, todo: readonly Todo[]): Choice | null {
  const { state } = session
  const [first] = todo
  if (first) return doIt(state, step.no, first)
  const [bag] = isLastRound(state, step.no) ? stillToTip(state) : []
  // Enter, pressed by habit, must not say of a bag what nobody saw.
  if (bag) return tipFirst(containerName(state, bag.container))
  if (findsOut(step)) return passes(step.no)
  return {
    says: `${onTheWayBack(step.title)} is done`,
    act: { do: 'send', commands: [{ do: 'close-step', step: step.no }] },
  }
}

function tipFirst(bag: string): Choice {
  return {
    says: `nothing: tip out ${bag}, then choose by number`,
    act: {
      do: 'say',
      what: `Tip out ${bag}.`,
      cure: 'Then choose it by its number when nothing is in it; scan it when something is.',
    },
  }
}

function enterClosed(scene: Scene, row: PlanRow): Choice | null {
  const { state } = scene.session
  const { step, standing, reasons } = row
  if (standing === 'ready' || standing === 'redo') return takeUp(state, step.no)
  if (standing === 'stripping') return goTo('go on taking it off', { at: 'off' })
  if (standing === 'done' || standing === 'idle') return nextChoice(scene)
  const aid = aidInTheWay(scene.session, row)
  if (aid) return doIt(state, step.no, aid)
  if (reasons.length > 0 && reasons.every(({ code }) => code === 'look-due')) {
    // It is a claim about what hands and eyes did: Enter, pressed once too often, must not make it.
    return {
      says: 'nothing: look and count first, then choose by number',
      act: {
        do: 'say',
        what: 'See and count what lies beneath, and that nothing is left inside.',
        cure: 'Then choose the last look by its number.',
      },
    }
  }
  const before = reasons.find((reason) => reason.code === 'step-before')
  if (before?.code === 'step-before')
    return goTo(`look at ${stepName(state, before.step)}`, { at: 'step', step: before.step })
  if (reasons.length === 0) return goTo('what goes back', { at: 'back' })
  // The cure is a statement, "the new gasket is here": Enter alone makes none.
  return {
    says: 'nothing: choose by number what lifts it',
    act: {
      do: 'say',
      what: `It waits for ${reasons.length === 1 ? 'one thing' : `${reasons.length} things`}.`,
      cure: 'A number puts the words that lift it into the line.',
    },
  }
}
