// Leaves with 0 when the program is well: the container runs this once a minute.
// With a webhook it asks the program. Polling opens no port: there the program ends when the platform
// refuses it, and the container with it, so what can be seen from here is that the database can be read.
import {join} from 'node:path';
import Database from 'better-sqlite3';

const {PUBLIC_URL, WEBHOOK_PORT = '8080', DATABASE_URL, DATA_DIR = './data'} = process.env;

if (PUBLIC_URL) {
	const answer = await fetch(`http://127.0.0.1:${WEBHOOK_PORT || '8080'}/health`);
	if (!answer.ok) throw new Error(`Expected /health to answer 200; got ${answer.status}`);
} else {
	const file = DATABASE_URL ? DATABASE_URL.replace(/^file:/, '') : join(DATA_DIR, 'pursekey.db');
	const database = new Database(file, {readonly: true, fileMustExist: true});
	database.prepare('select 1 from find limit 1').get();
	database.close();
}
