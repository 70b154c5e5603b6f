// Every limit the platform sets, written once. The name in each comment is the id in platform-limits.json.

/** Most characters of a message after markup is taken out (message_text); counted in UTF-16 units, the stricter way. */
export const textMax = 4096;
/** Most characters of a caption after markup is taken out (caption). */
export const captionMax = 1024;
/** Most characters of the answer to a button press (callback_answer_text). */
export const callbackAnswerMax = 200;
/** What a command may be called (command). */
export const commandName = /^[a-z0-9_]{1,32}$/;
/** Most characters of a command's description (command). */
export const commandDescriptionMax = 256;
/** Most commands in one list (command). */
export const commandsMax = 100;
/** Most characters of the hint in an empty text box (input_placeholder). */
export const placeholderMax = 64;
/** Most characters that a copy button copies (copy_text_button). */
export const copyTextMax = 256;
/** Most bytes of UTF-8 a button carries; the least is one (callback_data). */
export const callbackDataBytesMax = 64;
/** Most buttons under one message (inline_buttons_total). */
export const inlineButtonsMax = 100;
/** How long a button press can be answered, in milliseconds (answer_callback: a minute of waiting). */
export const callbackAnswerWithinMs = 60_000;
/** Most bytes of a photo sent by the bot (send_photo). */
export const photoBytesMax = 10_000_000;
/** Most pixels of width plus height of a photo sent by the bot (send_photo). */
export const photoSidesMax = 10_000;
/** Longest side of a photo over its shortest (send_photo). */
export const photoRatioMax = 20;
/** Most bytes of a file sent by the bot (send_document). */
export const documentBytesMax = 50_000_000;
/** Most bytes of a file the bot can fetch (get_file). */
export const downloadBytesMax = 20_000_000;
/** How long the link to a file stays good, in milliseconds (get_file: at least one hour). */
export const downloadLinkMs = 3_600_000;
/** Fewest and most items of an album (media_group). */
export const albumSize = {min: 2, max: 10} as const;
/** Messages a second to one chat (per_chat), and how many may come at once before that counts (from memory). */
export const chatRate = {perSecond: 1, burst: 5} as const;
/** Messages a second to all chats together (bulk). */
export const overallPerSecond = 30;
/** Messages a minute to one group (per_group). */
export const groupPerMinute = 20;
/** Most updates of one getUpdates call (get_updates_limit). */
export const updatesMax = 100;
/** What a webhook's secret may look like (secret_token). */
export const webhookSecret = /^[A-Za-z0-9_-]{1,256}$/;
/** What a link to the bot may carry (start_payload). */
export const startPayload = /^[A-Za-z0-9_-]{1,64}$/;
/** Most metres of uncertainty around a location (horizontal_accuracy). */
export const accuracyMaxM = 1500;
/** How long after sending the bot may delete a message, in milliseconds (delete_within). */
export const deleteWithinMs = 48 * 3_600_000;
/** Most characters of the bot's long and short descriptions (from memory; not in the list). */
export const descriptionMax = {long: 512, short: 120} as const;
