import { quoted } from '../quoted.ts';
import { itemName } from './items.ts';

/** The `sagline` command. */
export const cli = {
  help: `Judges the undercarriage of tracked machines from a walk file.

  sagline demo         prints a walk file: two invented machines with a walk each
  sagline score FILE   scores every walk in a walk file and prints the result as JSON,
                       with the hours left of each machine from all its walks
  sagline plan FILE    prints the job plan of each machine at its last walk as JSON
  sagline options FILE compares tracks for each machine in a walk file and prints the result
                       as JSON: its options, or plain rubber and steel where it names none
                       (ground, turning and hours a year are the machine's \`use\`)
  sagline rental FILE  works out the charge list of each rental return in a walk file or
                       bundle, from its hand-out walk, return walk and contract, as JSON
  sagline appraise FILE
                       prints what each undercarriage is worth at its last walk as JSON
  sagline check FILE   checks the seals of a walk file or bundle and names what was changed
                       (FILE may be - for what comes in by pipe)
  sagline schema       prints the JSON Schema of the walk file
  sagline --help       prints this
  sagline --version    prints the version

Lengths are millimetres, percent worn runs from 0 (new) to 100 (at the limit),
money is in minor units of the currency named. Hours left and money are estimates.
Exit codes: 0 done; 2 bad input, with one sentence on standard error;
3 checked, and not as it was sealed.
The numbers are an aid: the maker's manual, the site's rules and a qualified
person's judgement come first.
`,
  version: (version: string): string => `sagline ${version}`,
  error: (line: string): string => `sagline: ${line}`,
  inFile: (name: string, line: string): string => `${quoted(name)}: ${line}`,
  noCommand:
    'Say what to do: sagline demo, sagline score FILE, sagline plan FILE, sagline options FILE, sagline rental FILE, sagline appraise FILE, sagline check FILE or sagline schema; sagline --help tells more.',
  unknownCommand: (command: string): string =>
    `There is no command ${quoted(command)}: use demo, score FILE, plan FILE, options FILE, rental FILE, appraise FILE, check FILE or schema; sagline --help tells more.`,
  noFile: (command: string): string =>
    `Name the walk file, or - for what comes in by pipe: sagline ${command} FILE.`,
  extra: (command: string, argument: string): string =>
    `sagline ${command} does not take ${quoted(argument)}; sagline --help tells more.`,
  notFound: 'There is no such file.',
  isFolder: 'This is a folder, not a file.',
  notAllowed: 'You are not allowed to read this file.',
  noWalk: 'The file holds no walk to score.',
  noMachineAtAll: 'The file holds no machine to choose tracks for.',
  noMachine: (walk: string, machine: string): string =>
    `The walk ${quoted(walk)} is of the machine ${quoted(machine)}, which is not in the file.`,
  noReturn: 'The file holds no rental return to charge.',
  noContract: (walk: string, machine: string): string =>
    `The file holds no contract for the return ${quoted(walk)} of the machine ${quoted(machine)}.`,
  contractGone: (walk: string, contract: string): string =>
    `The return ${quoted(walk)} names the contract ${quoted(contract)}, which is not in the file or is of another machine.`,
  handOutGone: (walk: string, handOut: string): string =>
    `The return ${quoted(walk)} is held against the hand-out walk ${quoted(handOut)}, which is not in the file or is of another machine.`,
  newerRecord: (key: string): string =>
    `The record ${quoted(key)} is from a newer version of Sagline. Update, then score it again.`,
  nothing: 'nothing',
  seal: (at: number, of: number, result: string): string => `Seal ${at} of ${of}: ${result}`,
  later: (key: string, kind: 'added' | 'changed' | 'gone'): string =>
    `after the seal, not part of it: ${key} (${kind})`,
  notWritten: 'The result could not be written.',
  bug: (line: string): string => `Something went wrong that is not your fault (${quoted(line)}).`,
} as const;

/** A reading that belongs to nothing the machine has. */
export const notUsedLine = (place: string, item: string): string =>
  `Not used: this machine has no ${itemName(item)} at ${place}.`;
