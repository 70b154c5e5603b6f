# Sentences on what belongs to people and where it goes: copies, forgetting, passing on.

command-sharing = Your name and places in public
command-privacy = What I hold on you, and why
command-mydata = A copy of all I hold on you
command-forget = Erase all I hold on you
command-export = A file of records
command-season = A year in numbers
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

sharing =
    Records may be published. This is what they say of you:
    Found by: { $named ->
        [yes] { $name }
       *[no] nobody's name
    }
    Place: { $side ->
        [none] as you told it
        [small] a square of 1 km
       *[large] a square of 10 km
    }
sharing-example = Your find no. { $number } reads: { $isTold ->
    [yes] { $place }
   *[no] the place is left out
}, { $named ->
    [yes] found by { $name }
   *[no] found by nobody named
}.
sharing-how = To be named, write a name after the command, such as: /sharing Sea Glass Annie. Any name you like, but please not a child's. In a square, your note and photos are left out, too. Whoever runs this survey sees the exact place.
sharing-places-none = Places as I told them
sharing-places-small = In a square of 1 km
sharing-places-large = In a square of 10 km
sharing-nobody = Nobody's name
sharing-name-long = That name is too long. Please choose one of at most { $most } letters, so that it fits into a record.
sharing-name-contact = Others could reach you by that. Please choose a plain name without a number or address, since everybody can read it.

privacy =
    What I keep of you: your number on this chat platform, language and time zone, what you said of your measuring sheet, and a name only if you choose one. Of each find: your answers, place, day, note and photos, without hidden data.
    What for: the record of the find, and nothing else. { $forwarded ->
        [yes] The record goes to whoever keeps records for this survey, without you and without photos. A person may check it.
       *[no] A person may check it.
    }
    How long: a saved find until you delete it. An unfinished one for { $days } days without an answer; I tell you { $before } days before.

    See all of it: /mydata
    Change or delete a find: /drafts
    Your name and places in public: /sharing
    Erase everything: /forget
unfinished-warning = { $count ->
    [one] Your find no. { $numbers } is not finished, and nothing has come for some weeks. I keep it until { $day } and then erase it, with its photos. Press the button if you want to go on.
   *[other] Your finds no. { $numbers } are not finished, and nothing has come for some weeks. I keep them until { $day } and then erase them, with their photos. Press a button if you want to go on.
}
unfinished-go-on = Go on with no. { $number }

export =
    Which days shall the file hold?{ $isNarrowed ->
        [yes] {" "}Only finds in { $square }.
       *[no] {" "}For one grid square alone, write it after the command, such as: /export SW 46
    }
export-year = All of { $year }
export-month = { $month }
export-always = All days
export-which = Which finds?
export-all = All finds
export-checked = Checked by a person
export-unchecked = Not checked yet
export-form = In which form? An archive is what data portals take, a table opens as a spreadsheet, a map file in map programs.
export-archive = Archive for portals
export-csv = Table
export-geojson = Map file
export-soon = I am writing the file. It comes here when it is done; many records take a minute.
export-again = I do not know that choice any more. Please write /export again.
export-square = I do not know a grid square “{ $written }”. Write it like SW 46 or SW 46 30, or /export alone for everywhere.
parcel-export = { $records ->
    [one] One record.
   *[other] { $records } records.
} Places that a finder or a law wants hidden are told as squares, without note and photos. What was deleted later has to go from your copy, too.
parcel-nothing = There is no record that fits. Nothing was written. Try other days, or all finds.
parcel-too-large = The file is larger than 50 MB, and I cannot send it here. Please choose fewer days, or ask whoever keeps the program to write it there.
parcel-not-described = I cannot write this yet: whoever keeps the program has first to say what the data are called, whom to ask, and under which licence (DATASET_FILE in the README).
season-which = Write a year after the command, such as: /season { $year }
season-soon = I am counting { $year }. The numbers come here in a moment.
season-heading = Finds of { $year }
season = { $year }: { $finds ->
    [one] one find
   *[other] { $finds } finds
}, { $cases ->
    [one] one egg case
   *[other] { $cases } egg cases
}.
season-empty = There are no saved finds of { $year }.
season-kinds = By kind:
season-places = By place, in squares of 10 km or by name:
season-statuses = By who looked at it:
season-line = { $name }: { $finds ->
    [one] one find
   *[other] { $finds } finds
}, { $cases ->
    [one] one case
   *[other] { $cases } cases
}
season-more = • and { $count } more
season-unnamed = Not named
season-hidden = Place hidden or not on a map
season-cases = Egg cases
season-status = { $status ->
    [agreed] Name confirmed
    [other-name] Name corrected
    [higher-rank] Named as far as it can be told
   *[unverified] Not checked yet
}
season-rejected = Not counted: { $count ->
    [one] one find that was no egg case.
   *[other] { $count } finds that were no egg case.
}
season-before = The year before: { $year }
