# Sentences of the program itself, in English: greetings, commands, and what to do when something went wrong.

welcome = Hello. I help you find out which shark, skate or ray laid the egg case (“mermaid's purse”) that you found on a beach.
safety = First, stay safe:
    • Tide: look up low water, go out while the sea falls, be back before it rises.
    • Stay away from cliff edges and the foot of cliffs, from breaking waves and soft mud.
    • Leave glass, hooks, needles, metal and flares alone, and tell the coast guard or whoever looks after the beach.
    • Children go with an adult.
    • Wash your hands afterwards and before you eat.
    • Live egg cases, and those tied to weed or rock, stay in the sea.
safety-places = { $rules }
    { $tides }
    { $emergency }
privacy-short = I store your answers, the place and your photos (without hidden data) for the record and nothing else. Please send no names of children. With /drafts you change or delete a find.
begin = Show me a find
begin-read = I have read this, begin
welcome-back = Hello again. Shall we look at a find?
help =
    What I can do:
    /find – look at a new find
    /bowl – what is soaking, and since when
    /drafts – your saved finds: change or delete them
    /cancel – leave this find for now
    /safety – the word on safety
    /region – whose egg cases I tell apart
    /settings – your time zone
    { $group ->
        [yes] In a group, reply to my message when I ask you to write, or put /say before your answer.
       *[no] If you are stuck, press “Back” or write /cancel.
    }
cancelled = I put this find aside. The buttons of its last question still work, if you want to go on.
nothing-to-cancel = There is nothing to leave. Write /find to look at a find.
nothing-open = I do not have a find open with you here. Shall we look at one?
not-yours = This find belongs to somebody else. Write /find to begin your own.
button-go-on = Go on with it
say-how = Write /say and then your answer, such as: /say 62 mm
in-group-reply = To write, reply to this message or begin with /say.
find-of = { $name }:
finder = Finder of no. { $number }

bowl-empty = Nothing is soaking. A case goes into the bowl when you answer that it is dry.
bowl-list = In the bowl:
bowl-soaking = No. { $number }: since { $since }, ready at { $due }
bowl-ready = No. { $number }: since { $since }, ready
bowl-open = Open no. { $number }
bowl-another = Add a case to this bowl

drafts-empty = You have no saved finds yet. Write /find to look at one.
drafts-list = { $count ->
    [one] You have one saved find.
   *[other] You have { $count } saved finds.
} Press one to see, change or delete it.
drafts-line = No. { $number }: { $name }, { $date }, { $place }
drafts-open = Open no. { $number }
drafts-older = Older ones
draft-card =
    No. { $number }: { $name }
    { $date }, { $place }
    How many: { $count }
    Note: { $note }
    Photos: { $photos }
    Checked: not yet
draft-mend-place = Change place
draft-mend-date = Change day
draft-mend-count = Change how many
draft-mend-note = { $has ->
    [yes] Change note
   *[no] Add a note
}
draft-delete = Delete
draft-really = Shall I delete find no. { $number }, with its photos? This cannot be undone.
draft-delete-yes = Yes, delete it
draft-delete-no = No, keep it
draft-deleted = Find no. { $number } is deleted, with its photos. If it was passed on, I tell the receiver to drop it.
draft-none = no
draft-live = Live egg case, left in place
draft-unnamed = Not named yet
draft-shortlist = { $others ->
    [one] { $name } or one other
   *[other] { $name } or { $others } others
}
draft-gone = This find is not there any more.

region = I tell apart the egg cases of: { $region }. Press another region if you are on its shore. A place on the map chooses by itself.
region-set = From now on I tell apart the egg cases of: { $region }.
region-gone = I do not know this region any more. Write /region to see those I know.

settings = Times are shown for { $zone }. Press your own zone, or write it after the command, such as: /settings Europe/London
settings-set = From now on, times are shown for { $zone }.
settings-unknown = I do not know the time zone “{ $zone }”. Write it like Europe/London.

verifiers-draft =
    New draft no. { $number }: { $name }{ $unusual ->
        [yes] {" "}(unusual on this coast)
       *[no] {""}
    }
    { $date }, { $place }
    How many: { $count }
    { $length }
    Photos: { $photos }

trouble = Something went wrong on my side. I am sorry. Nothing of your find is lost. Press the button to go on where you were.
anonymous = You write as the group itself, so I cannot tell whose find it is. Please press the button to go on as yourself.
sender-chat = I can only work with people, not with channels.
group-hello = Hello. Write /find when you have found an egg case. I only listen when you write a command, press a button or reply to me.

command-find = Look at a new find
command-bowl = What is soaking
command-drafts = Your saved finds
command-cancel = Leave this find for now
command-help = What I can do
command-safety = The word on safety
command-region = Whose egg cases I tell apart
command-settings = Your time zone
command-start = Begin
command-say = Your answer, in a group
short-description = Names the egg cases of sharks, skates and rays that you find on a beach.
description = Found a leathery pouch on a beach? Press Start. I ask one question at a time, remind you when it has soaked, and keep a draft record for science.
photo-lost = I could not read a photo of find no. { $number }. Please send it again as a photo, not as a file.

# Pictures of tallies and seasons: what stands in them, and what they show in words.
chart-nothing = Nothing found yet.
map-dots = A dot is a place with one case. A number says how many cases.
map-squares = A square is as much as the finder tells: the case lay somewhere in it.
map-source = Coastline: Natural Earth, 1:10 million.
map-metres = { $length } m
map-kilometres = { NUMBER($length, useGrouping: "false") } km
map-alt = A map with { $cases ->
    [one] one case
   *[other] { $cases } cases
}{ $places ->
    [0] {""}
    [one] {" "}at one place
   *[other] {" "}at { $places } places
}{ $squares ->
    [0] {""}
    [one] {", one square hides the place of some"}
   *[other] {", "}{ $squares } squares hide the places of some
}.
map-line = { $latitude }, { $longitude }: { $count ->
    [one] one case
   *[other] { $count } cases
}
map-line-square = somewhere from { $south } to { $north } north and from { $west } to { $east } east: { $count ->
    [one] one case
   *[other] { $count } cases
}
bars-more = And { $kinds ->
    [one] one kind
   *[other] { $kinds } kinds
} more, with { $cases ->
    [one] one case
   *[other] { $cases } cases
}.
bars-alt = { $cases ->
    [one] One case
   *[other] { $cases } cases
} of { $kinds ->
    [one] one kind
   *[other] { $kinds } kinds
} as bars, most first: { $label } with { $most }.
months-alt = { $label }: { $total ->
    [0] none.
    [one] one case, in { $month }.
   *[other] { $total } cases month by month, most in { $month }, with { $most }.
}

# Printed sheets.
poster-when = { $day }, { $from } to { $to }
poster-where = We meet at: { $place }
poster-low-water = Low water at { $time }, as read from the official table “{ $table }”. Check it again on the day.
poster-bring = Please bring
poster-join = Point your phone's camera here to join
poster-contact = Questions: { $contact }
poster-code = A QR code that opens { $link }
crib-title = Egg cases at true size: { $region }
crib-page = Page { $page } of { $pages }
crib-ruler = If this is not 100 mm long, print at 100 %.
crib-ruler-alt = A ruler 100 mm long
measuring-sheet-title = Measuring sheet
measuring-sheet-print = Print this at 100 %, not fitted to the page. Then lay the egg case in the middle, hold the phone flat above and take in the whole sheet. The line below must be 100 mm long.
measuring-sheet-card = A bank card fills this outline exactly. If it does not, print again at 100 %.
measuring-sheet-card-alt = The outline of a bank card, 85.6 by 54 mm
crib-length = { $from } to { $to } mm long, here { $middle } [{ $number }]
crib-width = { $from } to { $to } mm wide, here { $middle } [{ $number }]
crib-no-length = No length is published: the length drawn is a guess.
crib-no-width = No width is published: the width drawn is a guess.
crib-strings = Its strings are longer than drawn.
crib-half = Drawn at half size: it is too large for the page.
crib-alt = The egg case of { $label }, seen from above
crib-sources = Sizes are of whole cases without horns and strings. Where they are published:
