import { Field } from './field.tsx';

/** True when every word of the search is somewhere in the text. */
export const fits = (text: string, search: string): boolean => {
  const all = text.toLowerCase();
  return search
    .toLowerCase()
    .split(/\s+/)
    .every((word) => all.includes(word));
};

interface SearchProps {
  readonly label: string;
  readonly text: string;
  readonly onInput: (text: string) => void;
}

/** Looks something up in a list as one types. */
export const Search = ({ label, text, onInput }: SearchProps) => (
  <Field label={label} value={text} inputMode="search" onInput={onInput} />
);
