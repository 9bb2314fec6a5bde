import type { State } from '../journal/state.ts'
import { accountOf } from '../ledger/ledger.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { TighteningFacts } from '../plan/facts.ts'
import { layoutFor, layoutOf } from '../plan/pattern.ts'
import { classInSize, threadInSize } from '../trade/size-text.ts'
import { compareOrders, type OrderDifference } from '../trade/tightening-order/compare-orders.ts'
import {
  type OrderRule,
  type OrderSource,
  orderSource,
  proposeOrder,
} from '../trade/tightening-order/order.ts'
import { type PassQuestion, questionPasses } from '../trade/tightening-passes/question-passes.ts'
import { questionTorque, type TorqueQuestion } from '../trade/torque/torque-question.ts'

/** What is worth asking about a tightening as it was set. Nothing waits for an answer: the manual decides. */
export type JointQuestion =
  | TorqueQuestion
  | PassQuestion
  /** Dry or oiled is part of every torque, and nobody said it. */
  | { code: 'condition-missing' }
  /** No order was typed: this one follows from the drawing. */
  | { code: 'order-by-rule'; rule: OrderRule; source: OrderSource }
  /** The order typed is not that of the usual rule; it holds. */
  | {
      code: 'order-differs'
      rule: OrderRule
      difference: Exclude<OrderDifference, { code: 'same' | 'mirrored' }>
    }

/** Works out what to ask about a tightening, from the sizes of its fasteners and the drawing of their positions. */
export function jointQuestions(state: State, tightening: TighteningFacts): JointQuestion[] {
  const { passes, condition, because } = tightening
  // What was asked and answered with a reason is not asked again.
  const values =
    because === undefined ? [...torqueQuestions(state, tightening), ...questionPasses(passes)] : []
  const takesTorque = passes.some(({ kind }) => kind === 'torque' || kind === 'check')
  return [
    ...values,
    ...(takesTorque && condition === undefined ? [{ code: 'condition-missing' } as const] : []),
    ...orderQuestions(state, tightening),
  ]
}

function torqueQuestions(
  state: State,
  { piece, with: others = [], passes }: TighteningFacts,
): TorqueQuestion[] {
  const found = new Map<string, TorqueQuestion>()
  for (const { size, name } of sizesOf(state, [piece, ...others])) {
    const thread = threadInSize(size)
    if (thread === null) continue
    const fastenerClass = classInSize(size)
    for (const [index, pass] of passes.entries()) {
      if (pass.kind !== 'torque' && pass.kind !== 'check') continue
      const later = passes.slice(index + 1)
      const question = questionTorque({
        thread,
        ...(fastenerClass && { fastenerClass }),
        newtonMetres: pass.newtonMetres,
        typed: pass.typed,
        thenAngle: later.some(({ kind }) => kind === 'angle'),
        thenMore: later.some(({ kind }) => kind === 'torque'),
        name,
      })
      // Several lots of one thread, and passes that come again, are asked about once.
      if (question) found.set(`${pass.typed} ${question.code} ${thread.size}`, question)
    }
  }
  return [...found.values()]
}

function sizesOf(state: State, pieces: readonly PieceId[]): { size: string; name: string }[] {
  return pieces.flatMap((id) => {
    const { size, name } = accountOf(state.ledger, id).piece
    return size === undefined ? [] : [{ size, name }]
  })
}

function orderQuestions(state: State, { piece, order, orderBy }: TighteningFacts): JointQuestion[] {
  if (orderBy === undefined) return []
  if (orderBy !== 'manual')
    return [{ code: 'order-by-rule', rule: orderBy, source: orderSource(orderBy, order.length) }]
  const layout = layoutFor(layoutOf(state, piece), order)
  if (!layout) return []
  const { rule, others } = proposeOrder(layout)
  const differences = [rule, ...others].map((each) => compareOrders(layout, order, each))
  // An order that follows any rule of the shape, from whichever end, is no slip.
  if (differences.some((each) => each?.code === 'same' || each?.code === 'mirrored')) return []
  const [difference] = differences
  if (!difference || difference.code === 'same' || difference.code === 'mirrored') return []
  return [{ code: 'order-differs', rule, difference }]
}
