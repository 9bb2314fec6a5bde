import type { Errand } from '../errand.ts'
import type { Verb } from '../verb.ts'

export const doctorVerbs: readonly Verb[] = [
  {
    words: ['doctor'],
    topic: 'job',
    forms: ['doctor', 'doctor mend', 'doctor from PATH', 'doctor cut'],
    says: 'Examines the record line by line. "mend" puts right what is certain, "from" takes what is missing from a copy, "cut" keeps what stands; each keeps the file as it was.',
    examples: ['doctor', 'doctor mend', 'doctor from /media/stick/blue-twin', 'doctor cut'],
    meant: /^(?:mend|cut|from .*)?$/i,
    read(line): Errand {
      const [how] = line.take(/^(mend|cut)$/i) ?? []
      if (how) return { errand: 'doctor', how: how.toLowerCase() as 'mend' | 'cut' }
      const [path] = line.take(/^from (.+)$/i) ?? []
      if (path) return { errand: 'doctor', how: 'from', path }
      if (/^from$/i.test(line.rest)) line.missing('PATH')
      line.end()
      return { errand: 'doctor', how: 'look' }
    },
  },
]
