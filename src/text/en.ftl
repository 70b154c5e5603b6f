# Sentences of the program itself, in English: greetings, commands, what to do in trouble. It is long, since every command speaks here.

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
privacy-short = I store your answers, the place and your photos (without hidden data) for the record and nothing else. Please send no names of children. With /drafts you change or delete a find, and /privacy tells the rest.
begin = Show me a find
begin-read = I have read this, begin
welcome-back = Hello again. Shall we look at a find?
help =
    What I can do:
    /find – look at a new find
    /bowl – what is soaking, and since when
    /sort – many cases, one by one
    /tray – many cases in one photo
    /tally – the day in numbers
    /drafts – your saved finds: change or delete them
    /days – survey days to come, and who comes
    /tellme – hear of survey days, or hear no more
    /cancel – leave this find for now
    /safety – the word on safety
    /region – whose egg cases I tell apart
    /sheet – a page to measure cases on, by photo
    /settings – your time zone
    /sharing – your name and places in public
    /privacy – what I hold on you: see it, erase it
    { $group ->
        [yes] In a group, reply to my message, or write /say and your answer. Everyone may answer for a find; /onlyme keeps yours to you.
       *[no] If you are stuck, press “Back” or write /cancel.
    }
cancelled = I put this find aside. The buttons of its last question still work, if you want to go on.
cancelled-else = I have stopped asking. What you told me so far is kept.
nothing-to-cancel = There is nothing to leave. Write /find to look at a find.
nothing-open = I do not have a find open with you here. Shall we look at one?
not-yours = This find belongs to somebody else, and only they can do that. Write /find to begin your own.
button-go-on = Go on with it
say-how = Write /say and then your answer, such as: /say 62 mm
in-group-reply = To write or send a photo, reply to this message. Words may begin with /say instead.
find-of = { $name }, no. { $number }:
find-of-number = No. { $number }:
answered = → { $chosen }
answered-by = → { $chosen } ({ $name })
say-which = More than one find is open here. Please reply to the question that you mean, so that your answer goes to the right find.
answerers-all = Everyone here may answer.
answerers-alone = Only you answer.
option-only-me = Only I answer
option-everyone-answers = Everyone may answer
answerers-owner = From now on, only you answer for find no. { $number }.
answerers-everyone = From now on, everyone in this group may answer for find no. { $number }.
answerers-none = You have no find open here. Begin one with /find, then write /onlyme.
answerers-private = Here, only you answer anyway. /onlyme is for groups.

bowl-empty = Nothing is soaking. A case goes into the bowl when you answer that it is dry.
bowl-list = In the bowl:
bowl-list-group = In the bowl of this group:
bowl-more = And { $count } more.
bowl-broken = No. { $number }: I cannot read this find any more. I am sorry. The others are safe.
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
    Checked: { $checked }
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
draft-lengths = { $count ->
    [one] One case, { $least } mm
   *[other] { $count } cases, { $least } to { $most } mm
}
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
anonymous = You write as the group itself, so I cannot tell who you are. Press the button to go on as yourself. To answer for a find, reply to its question.
button-as-myself = Go on as myself
sender-chat = I can only work with people, not with channels.
group-hello = Hello. Write /find when you have found an egg case. I only listen when you write a command, press a button or reply to me.

command-find = Look at a new find
command-bowl = What is soaking
command-sort = Sort a bowl, case by case
command-tray = Many cases in one photo
command-tally = What was found today
command-drafts = Your saved finds
command-cancel = Leave this find for now
command-help = What I can do
command-safety = The word on safety
command-region = Whose egg cases I tell apart
command-settings = Your time zone
command-sheet = A page to measure cases on
sheet-soon = I am making the page. It comes here in a moment.
parcel-sheet = Print this page at 100 %, not “fit to page”: a bank card must fill its outline exactly. Then lay a case on it, take in the whole page from straight above, and send me the photo where I ask for the length.
command-days = Survey days to come
command-tellme = Hear of survey days
command-day = Plan a survey day
command-invite = Ask people to help
command-team = Who helps
command-review = Finds to be checked
command-start = Begin
command-say = Your answer, in a group
command-onlyme = Only I answer for my find
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

# The day in numbers.
tally-heading = { $span ->
    [today] Today, { $day }
    [yesterday] Yesterday, { $day }
   *[other] { $day }
}
tally-today = Today
tally-yesterday = Yesterday
tally-month = This month
tally-count = { $finds ->
    [0] Nothing found then is saved.
    [one] { $cases ->
        [one] One case.
       *[other] { $cases } cases, all alike.
    }
   *[other] { $cases } cases in { $finds } finds.
}
tally-line = { $label }: { $count }
tally-several = One of several kinds
tally-unnamed = No name yet
tally-alive = Alive, left in the sea
tally-unfinished = { $count ->
    [one] One more find is not finished.
   *[other] { $count } more finds are not finished.
}
tally-shared = Shared by: { $names }
tally-someone = { $count ->
    [one] someone
   *[other] { $count } people
}
tally-unchecked = A name is a draft until somebody who knows egg cases has looked at it.

# Many cases out of one bowl.
sort-begin = Let us sort the bowl. Take out one case, answer for it, put it aside, take the next. Each gets a number of its own. All must be empty and light: if something may live in one, press “It looks different” and say so.
sort-length = How long is this one, from the border of one apron to the border of the other?
sort-saved = No. { $number } is saved: { $name }{ $mm ->
    [0] {""}
   *[other] , { $mm } mm
}.
sort-count = { $count ->
    [0] No case is sorted yet.
    [one] One case is sorted.
   *[other] { $count } cases are sorted.
}
sort-next = Take the next case. What is it like?
sort-next-waiting = Next is no. { $number }, which lies in this bowl already. What is it like?
sort-like-line = • No. { $number }: { $name }
sort-same = Same as the last one
sort-like = Like no. { $number }
sort-different = It looks different
sort-pause = Pause
sort-all-done = That was the last one
sort-as = As no. { $number }: { $name }.
sort-misfit-length = No. { $number } was named { $name } ({ $low } to { $high } mm long). This length does not fit, so I worked out the name anew. Measure once more, or press “Change an answer”.
sort-misfit-name = No. { $number } was named { $name }. With this length the name is not the same, so I worked it out anew.
sort-paused = Pause. { $count ->
    [0] No case is sorted yet.
    [one] One case is sorted.
   *[other] { $count } cases are sorted.
} Write /sort to go on, or press a button above.
sort-ended = This sorting is over. Write /sort to begin another.
sort-done = { $count ->
    [0] All done.
    [one] All done: one case is sorted.
   *[other] All done: { $count } cases are sorted.
}
