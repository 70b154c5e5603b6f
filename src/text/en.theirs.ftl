# Sentences on what belongs to people and where it goes: copies, forgetting, passing on.

command-mydata = A copy of all I hold on you
command-forget = Erase all I hold on you
command-forwarding = Records that are passed on

my-data-soon = I am putting together all that I hold on you. It comes here in a moment.
my-data-inside =
    This is all that the egg case bot holds on you.

    my-data.json – your settings, your finds with your answers and records, and the messages it still remembers. Any text editor opens it. Times are in UTC.
    photos – the photos of your finds, as they are kept: without hidden data.

    In the chat, /drafts changes or deletes a find, and /forget erases everything.
parcel-my-data = { $parts ->
    [one] All that I hold on you. Open READ-ME.txt in it first.
   *[other] All that I hold on you, part { $part } of { $parts }. Open READ-ME.txt in the first part.
} To have it erased, write /forget.
parcel-already = I am at it already. It comes here in a moment.
parcel-failed = I could not put that together. I am sorry. Please try again later, or ask whoever runs this bot.

farewell =
    I can erase all that I hold on you: your settings, your finds with their answers, places, notes and photos, and what you do here for others. Whoever got a record of yours from me is told to drop it.
    { $kept ->
        [0] {""}
        [one] One of your finds was checked by a person. Of it stays what was found, where, when and how large, without your name, note and photos.
       *[other] { $kept } of your finds were checked by a person. Of these stays what was found, where, when and how large, without your name, note and photos.
    }
    What stands in our chat stays on your screen until you delete it there. Copies kept in case of an accident are thrown away later.

    This cannot be undone. Shall I erase it?
farewell-yes = Yes, erase it all
farewell-copy = Send me a copy first
farewell-no = No, keep it
farewell-kept = Good, I keep it all as it was.
farewell-too-old = That was some time ago, so I ask once more. Please write /forget again.
farewell-done = { $kept ->
    [0] All that I held on you is erased.
   *[other] All that I held on you is erased. What was checked stays without you.
} If you write to me again, we begin as if we had never met.

forwarding-off = Records are not passed on to anybody. Whoever keeps the program can set it up: the README says how, under “Settings”.
forwarding =
    Records passed on:
    { $waiting } on their way, { $sent } arrived, { $dead } given up.
forwarding-trouble = The last try that failed said: { $error }. I try again by myself, after growing pauses.
forwarding-dead = { $count ->
    [one] One message was given up after many tries.
   *[other] { $count } messages were given up after many tries. The first ones:
}
forwarding-line = No. { $number }: record { $record }, version { $version }, { $tries ->
    [one] one try
   *[other] { $tries } tries
}, last answer: { $error }
forwarding-no-error = none
forwarding-retry = Try no. { $number } again
forwarding-retry-all = Try all again
forwarding-revived = { $count ->
    [0] There is nothing left to try again. Write /forwarding to see how things stand.
    [one] I try it again now. Write /forwarding in a while to see whether it arrived.
   *[other] I try { $count } messages again now. Write /forwarding in a while to see whether they arrived.
}
