/** A command of the program itself, beside the lines that are written into a job. */
export interface ProgramCommand {
  word: string
  forms: readonly string[]
  says: string
  examples: readonly string[]
}

/** The program's own commands: all that is not a line of the language. */
export const PROGRAM_COMMANDS: readonly ProgramCommand[] = [
  {
    word: 'new job',
    forms: ['new job NAME [--machine TEXT] [--units metric|us]'],
    says: 'Makes a job under the next free number, and chooses it.',
    examples: ['new job "The blue twin" --machine "parallel twin, water-cooled"'],
  },
  {
    word: 'jobs',
    forms: ['jobs [--all]'],
    says: 'Lists the jobs; archived ones too with --all.',
    examples: ['jobs'],
  },
  {
    word: 'use',
    forms: ['use JOB'],
    says: 'Chooses the job that lines go to, by its number, its name or its path.',
    examples: ['use 17', 'use "The blue twin"'],
  },
  {
    word: 'rename',
    forms: ['rename JOB NAME'],
    says: 'Gives a job another name; "rename job NAME" the chosen one, "rename PIECE to NAME" a piece in it.',
    examples: ['rename 17 "The blue twin, second winter"'],
  },
  {
    word: 'archive',
    forms: ['archive [JOB]', 'unarchive [JOB]'],
    says: 'Puts a job away, or takes it out again.',
    examples: ['archive 17'],
  },
  {
    word: 'demo',
    forms: ['demo [--whole]'],
    says: 'Makes an invented job to play with, up to the middle of its build-up, or whole.',
    examples: ['demo'],
  },
  {
    word: 'practice',
    forms: ['practice'],
    says: 'Makes a practice job: an invented hand pump, five minutes. The screens lead through it.',
    examples: ['practice'],
  },
  {
    word: 'run',
    forms: ['run FILE [--until TITLE]', 'run -'],
    says: 'Runs a file of lines, one command each, until one is refused.',
    examples: ['run rebuild.txt', 'run rebuild.txt --until "Build-up"'],
  },
  {
    word: 'restore',
    forms: ['restore FILE'],
    says: 'Makes a job again of the file that "backup" made: all of it is proven first, and no job is ever written over.',
    examples: ['restore /media/stick/17-blue-twin-2026-11-30-1705.zip'],
  },
  {
    word: 'doctor',
    forms: ['doctor [JOB]', 'doctor [JOB] mend', 'doctor [JOB] from PATH', 'doctor [JOB] cut'],
    says: 'Examines the record of a job line by line, and what lies around it. "mend" puts right what is certain, "from" takes what is missing from a copy or a back-up, "cut" gives up what cannot be kept; each keeps the file as it was.',
    examples: ['doctor 17', 'doctor 17 mend', 'doctor 17 from /media/stick/blue-twin'],
  },
  { word: 'help', forms: ['help [WORD]'], says: 'Shows all that can be written.', examples: ['help off'] },
]
