/** The short help: examples first, then how to go on. */
export const USAGE = `putback: take a machine apart and put every piece back.

Examples:
  putback new job "The blue twin"                 a job for a machine
  putback begin valve cover off                   a step of the strip-down
  putback "off 8 M6x25 hex 10 valve cover bolts"  what came off, into a bag
  putback 007 0001 61                             what a scanned label is for
  putback back                                    the way back, what blocks it
  putback fit cam cap I3                          home, or refused with why
  putback left                                    what is left over
  putback practice                                five minutes to learn it
  putback demo                                    an invented job to play with

Usage:
  putback                      the screens, in a terminal
  putback COMMAND ...          one command; "putback help" lists all of them
  putback help WORD            one of them
  putback run FILE             a file of commands

Write a line in quotes where it holds ; > or other signs of the shell.

Options:
  --job JOB      the job by number, name or path, instead of the one chosen last
  --home DIR     the folder of the jobs (or PUTBACK_HOME)
  --by NAME      who works, kept with each entry
  --json         one JSON object on standard output
  --no-colour    no colours (or NO_COLOR)
  --reader       the screens as sentences, line by line, for a screen reader
                 (or INK_SCREEN_READER=true; always so where TERM is dumb)
  --invert       a QR symbol for a light terminal without colours
  --help, --version

Ends with 0 done, 1 refused, 2 not understood or wrong use, 3 not recorded
(disk, lock, a damaged or a newer record), 4 no such job or none chosen,
5 done, but the answer could not be written.`
