/** What --help prints. */
export const help = `Prices one or more coating systems on a floor.

  npm run --silent price -- --system ID [options]

  --system ID        A system that comes with the program, or the path of a system's template file.
                     Up to four: give it again for each.
  --set NAME=VALUE   Gives a line its value in every sheet that has it. Numbers stand in the line's own unit,
                     typed as people write them (24.5, 22' 7", 24*22), or with a metric unit behind them
                     (6.9 m, 18 °C); shares as fractions (0.47) or with % (47%). A line for words takes them as
                     they stand: --set reader_name='Dana R.'
  --set TABLE.ROW.COLUMN=VALUE
                     The same for a cell. ROW is the row's key, or its number from 1.
  --rows TABLE=JSON  Gives a table other rows: --rows areas='[{"place":"Bay","length":24,"width":22}]'.
                     --set applies after it.
  --pricelist FILE   Products from this CSV file in place of the demo's.
  --brief            Prices only: a line a system with its price, price a square foot and days on site.
  --json             Every line, table and check as JSON, in place of the readable tables.
  --explain NAME     Why one line, or one cell TABLE.ROW.COLUMN, is what it is.
  --metric           Tables and explanations in metres, litres, kilograms and °C. The prices are the same. Numbers
                     that are given stay in the line's own unit, and so does what --json and --list print.
  --list             The systems; with --system also every entry and table that may be set.
  --help             This.

Ends with 0; with 3 when it printed prices and one is not for sale: incomplete, or stopped by a check. With 2 and words
on standard error when something given is wrong: all of it at once, and no price. With 1 on a fault of the program.
`;
