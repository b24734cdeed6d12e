// What the SQL of a file reads and writes, told from the words of its template literals.

export interface Touched {
  relation: string;
  writes: boolean;
}

/** The texts of all template literals of a TypeScript file, those within a value of another one by themselves. */
export function templatesOf(source: string): string[] {
  const templates: string[] = [];
  let at = 0;

  function skipQuoted(quote: string): void {
    for (at += 1; at < source.length && source[at] !== quote && source[at] !== '\n'; at += 1)
      if (source[at] === '\\') at += 1;
    at += 1;
  }

  /** Code up to the brace that ends it, or to the end of the file. */
  function code(): void {
    for (let depth = 0; at < source.length;) {
      const two = source.slice(at, at + 2);
      if (two === '//') at = (source.indexOf('\n', at) + source.length + 1) % (source.length + 1);
      else if (two === '/*') at = source.indexOf('*/', at) + 2;
      else if (source[at] === "'" || source[at] === '"') skipQuoted(source[at] as string);
      else if (source[at] === '`') template();
      else {
        if (source[at] === '{') depth += 1;
        if (source[at] === '}' && depth === 0) return;
        if (source[at] === '}') depth -= 1;
        at += 1;
      }
    }
  }

  function template(): void {
    let text = '';
    for (at += 1; at < source.length && source[at] !== '`'; at += 1) {
      if (source.startsWith('${', at)) {
        at += 2;
        code();
        text += '$1';
      } else {
        if (source[at] === '\\') at += 1;
        text += source[at];
      }
    }
    at += 1;
    templates.push(text);
  }

  code();
  return templates;
}

// Keywords of SQL are written in capitals here, as tests hold, so that a sentence with `from` in it is none.
const WORD = /'(?:[^']|'')*'|"([^"]+)"|\$1|[A-Za-z_]\w*|[(),.;]/g;

// What a WITH names, with or without its columns.
const NAMED = /(?:WITH|RECURSIVE|,)\s+(\w+)\s*(?:\([^()]*\)\s*)?AS\s+(?:NOT\s+)?(?:MATERIALIZED\s+)?\(/g;

/** Which relations stand where a statement, or a part of one, names what it reads and writes; aliases and functions are none. */
export function touchedBy(statement: string): Touched[] {
  const named = new Set([...statement.matchAll(NAMED)].map(([, name]) => name));
  const words = [...statement.replace(/--.*$/gm, '').matchAll(WORD)].map(([word, quoted]) => quoted ?? word);
  const touched: Touched[] = [];
  const isName = (word: string | undefined) => word !== undefined && /^[a-z_]\w*$/.test(word);
  /** By depth of brackets, whether a comma would name one more relation. */
  const listing: boolean[] = [false];
  let depth = 0;
  let expects: false | 'reads' | 'writes' = false;
  words.forEach((word, index) => {
    const before = words[index - 1] ?? '';
    if (word === '(') {
      depth += 1;
      listing[depth] = false;
      expects = false;
    } else if (word === ')') {
      depth -= 1;
    } else if (word === ',') {
      expects = listing[depth] === true ? 'reads' : false;
    } else if ((word === 'FROM' && before !== 'DISTINCT') || word === 'JOIN' || word === 'USING') {
      listing[depth] = word === 'FROM';
      expects = before === 'DELETE' ? 'writes' : 'reads';
    } else if (word === 'INTO' || (word === 'UPDATE' && !['FOR', 'DO', 'KEY'].includes(before))) {
      listing[depth] = false;
      expects = 'writes';
    } else if (/^[A-Z]+$/.test(word)) {
      if (!['LATERAL', 'ONLY'].includes(word)) expects = false;
      if (['WHERE', 'GROUP', 'ORDER', 'SELECT', 'SET', 'UNION', 'RETURNING', 'LIMIT'].includes(word))
        listing[depth] = false;
    } else if (expects !== false && isName(word)) {
      if (words[index + 1] !== '(' || expects === 'writes')
        touched.push({ relation: word, writes: expects === 'writes' });
      expects = false;
    }
  });
  return touched.filter(({ relation }) => !named.has(relation));
}
