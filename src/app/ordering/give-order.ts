import { orderCsv } from '../../files/order-csv.ts';
import { csvWords } from '../../words/en/csv.ts';
import { files } from '../../words/en/files.ts';
import { ordering as words } from '../../words/en/ordering.ts';
import { hand, walkFileName, type Way } from '../actions/files.ts';
import { fileNameOf } from '../data/save-file.ts';
import { csvReader, csvType } from '../handover/tables.ts';
import type { OrderModel } from './use-order.ts';

/** Gives the parts to order away as a table for a spreadsheet. */
export async function giveOrder({ walk, machine, outlook, order }: OrderModel, way: Way): Promise<void> {
  const reader = csvReader();
  const text = orderCsv({ key: walk.key, walk: walk.walk, machine, outlook, order }, reader);
  const name = `${fileNameOf(`${await walkFileName(walk.key)} ${words.tableName} ${csvWords.styles[reader.style]}`)}.csv`;
  await hand({ name, type: csvType, parts: [text] }, files.written(name), undefined, way);
}
