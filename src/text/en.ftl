# Every sentence of the program itself, in English; long, since a language is one file.

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
    /days – survey days to come, and who comes
    /tellme – hear of survey days, or hear no more
    /cancel – leave this find for now
    /safety – the word on safety
    /region – whose egg cases I tell apart
    /settings – your time zone
    { $group ->
        [yes] In a group, reply to my message when I ask you to write, or put /say before your answer. Everyone here may answer for a find; with /onlyme only you answer for yours.
       *[no] If you are stuck, press “Back” or write /cancel.
    }
cancelled = I put this find aside. The buttons of its last question still work, if you want to go on.
cancelled-else = I have stopped asking. What you told me so far is kept.
nothing-to-cancel = There is nothing to leave. Write /find to look at a find.
nothing-open = I do not have a find open with you here. Shall we look at one?
not-yours = This find belongs to somebody else, and only they can do that. Write /find to begin your own.
button-go-on = Go on with it
say-how = Write /say and then your answer, such as: /say 62 mm
in-group-reply = To write, reply to this message or begin with /say.
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

# Survey days: what people are told of them. Times are those of the beach's own clocks.
day-when = { $date }, { $from } to { $to }{ $away ->
    [yes] {" "}(by the clocks there)
   *[no] {""}
}
day-where = { $place }. We meet: { $meeting }
day-low-water = Low water: { $low }{ $hasHeight ->
    [yes] , { NUMBER($height, minimumFractionDigits: 1, maximumFractionDigits: 2) } m
   *[no] {""}
}, as read from: { $table }
day-bring = Please bring: { $bring }
day-contact = Questions: { $contact }
day-risks = Take care here: { $risks }
day-line = { $date }, { $from }: { $title }, { $place }
day-line-near = { $date }, { $from }: { $title }, { $place }, about { $away } km away
day-number = { $number }.
day-open = Open no. { $number }
# Tide and light: common practice on shores.
day-safe = Before you go:
day-safe-falling = The sea falls while we are there and turns at { $low }. Be off the beach by then.
day-safe-turn = The tide turns at { $low }. From then on the sea comes back: stay near the way off, and go when you are called.
day-safe-rising = The sea is rising the whole time: low water was at { $low }. Know your way off before you begin.
day-safe-small-tide = Even where the tide is small, wind and waves can cover a beach. Watch the sea.
day-safe-light = The sun sets at { $sunset }. Be on your way home by then.
day-safe-near-dark = The sun sets at { $sunset }, soon after the end. Bring a lamp for the way back.
day-safe-dark = The sun sets at { $sunset }, before the end. Bring a lamp, and stay off rocks in the dark.
day-safe-night = The sun sets at { $sunset }, and we are out at night. Bring a lamp each, and stay together.
day-safe-before-sunrise = The sun rises at { $sunrise }, after the start. Bring a lamp, and stay off rocks in the dark.
day-safe-no-sun = The sun does not rise on that day. Bring a lamp each, and stay together.
day-safe-weather = Check the weather and the sea before you leave. If there is a warning, stay at home.
day-safe-always = Children go with an adult. Keep away from cliffs and waves. /safety has it all.

day-announced = There is a survey day. Do you come?
day-evening = Tomorrow is the survey day.
day-soon = { $title } begins at { $from }: { $place }. We meet: { $meeting }
day-changed = The survey day has changed. This holds now; the file changes it in your calendar.
day-changed-time = Before, it was { $date }, { $from }.
day-changed-place = Before, it was here: { $place }.
day-cancelled = The survey day is off: { $title }, { $date }, { $from }, { $place }. Please do not go. The file takes it out of your calendar. Questions: { $contact }
day-thanks = Thank you for coming to { $title } at { $place }.
day-late = This comes late, I am sorry: I should have written at { $due }.
day-stop = No more of these
day-coming = Coming
day-perhaps = Perhaps
day-cannot = Can't
day-file = Calendar file
day-file-is = Open the file to put the day in your calendar.
day-file-check = Check tide, weather and sea before you go.
day-follow = More days like this
day-followed = I will tell you of all survey days that this coordinator calls for. With /tellme you change that.
day-noted-coming = Good, you come. I remind you the evening before and two hours before the start. The file is for your calendar. How many are you, yourself and children among them? I need no names.
day-noted-perhaps = Good, perhaps you come. I remind you the evening before and two hours before the start. The file is for your calendar. How many would you be?
day-noted-cannot = Noted: you cannot come. I tell you no more of this day.
day-noted-party = { $party ->
    [1] Noted: you come alone.
   *[other] Noted: you are { $party }.
}
day-said = { $answer ->
    [coming] You said that you come
   *[perhaps] You said that perhaps you come
    [cannot] You said that you cannot come
}{ $answer ->
    [cannot] .
   *[other] { $party ->
        [1] , alone.
       *[other] , { $party } of you.
    }
}
day-gone = This survey day is not there any more. /days shows those to come.
day-is-off = This survey day is off. Please do not go. /days shows those to come.
day-over = This survey day is over. /days shows those to come.
days-list = Survey days to come:
days-none = There are no survey days to come that I know of. I can tell you when there is one.
days-tellme = Tell me of new days

tellme-nothing = I tell nobody of survey days who did not ask. Of which may I tell you?
tellme-now = You hear of new survey days here:
tellme-wish-near = within { $km } km of { $latitude }, { $longitude }
tellme-wish-someone = all days of one coordinator
tellme-wish-name = all days of { $name }
tellme-last = Near my last find
tellme-near = Near another place
tellme-place = Which place? Send a pin, a grid reference or coordinates. I only keep it roughly, to a tenth of a degree. /cancel leaves it.
tellme-place-group = Write the place after the command, as a grid reference or coordinates, such as: /tellme 50.1, -5.5
tellme-back = Not: { $name }
tellme-stop = Stop all of this
tellme-stopped = Done. I tell you of no survey day any more, nor of those you said you come to. /tellme starts it again.

# A coordinator plans a survey day. Labels have at most 24 characters.
day-none = You have no survey day at hand.
day-own = Your survey days:
day-not-yours = This survey day is somebody else's. /day shows your own.
day-heads = Coming: { $coming }, perhaps: { $perhaps }, cannot: { $cannot }. Answers: { $answers }.
day-off = Call it off
day-off-really = Shall I call this day off, and tell everybody who heard of it?
day-off-yes = Yes, call it off
day-off-no = No, it takes place
plan-new = Plan a new day
plan-open = This day is not published yet.
plan-unfinished = not published yet
plan-begins = I ask one thing at a time. Nobody hears of the day before you publish it. All you write will be public, so please name no children.
plan-ask-title = What shall the day be called?
plan-ask-spot = Where is the beach? Send a pin, a grid reference or coordinates. Tides, light and clocks go by it.
plan-ask-place = What do people call the place?
plan-ask-date = On which day? Write it like 2 May.
plan-ask-start = When does it begin, by the clocks of the place? Write it like 09:30.
plan-ask-end = When does it end?
plan-ask-low-water = When is low water? Read it off the official tide table and write the time that clocks there show. Many tables leave out summer time: then add the hour.
plan-ask-low-height = How high is that low water in the table, in metres? Write it like 0.8.
plan-ask-table = What is the table called? People see it, so that they can check.
plan-ask-meeting = Where exactly do people meet?
plan-ask-bring = What should they bring?
plan-ask-contact = Whom can people ask? It may be a name you are glad to give, a number or an address. All will see it.
plan-ask-risks = What is dangerous at this place? Think of being cut off by the tide, cliffs, soft mud, a road.
plan-ask-which = The clocks go back in that night, and this hour comes twice. Which one do you mean?
plan-first = The first, summer time
plan-second = The second, winter time
plan-none-low-water = Hardly any tide here
plan-none-low-height = The table has no height
plan-none-bring = Nothing special
plan-none-risks = Nothing beside the usual
plan-saturday = Next Saturday
plan-sunday = Next Sunday
plan-nothing = nothing
plan-height = { NUMBER($height, minimumFractionDigits: 1, maximumFractionDigits: 2) } m
plan-time-which = { $time }, { $which }
plan-want-words = Please answer in words.
plan-want-spot = I need the spot on a map for this: a pin, a grid reference or coordinates.
plan-coarse-spot = That square holds more than one beach. Please send a pin or a finer grid reference.
plan-want-date = I could not read a day in that. Write it like 2 May, or press a button.
plan-past = { $date } is over. Which day to come is it?
plan-far = { $date } is more than a year away. Please choose a nearer day.
plan-want-time = I could not read a time in that. Write it like 09:30.
plan-no-such-hour = The clocks go forward in that night and leave out { $time }. Please write another time.
plan-too-much = From { $start } to { $time } is more than twelve hours. Please look at the times again.
plan-want-which = Please press one of the two buttons: the hour comes twice in that night.
plan-want-height = I could not read a height in that. Write it in metres, like 0.8.
plan-too-long = That has { $length } letters, and { $most } fit. Please say it shorter.
plan-odd = I cannot use that here. Please answer in words, or with a pin where I ask for the place.
plan-whole = All is answered. Publish the day with the button, or change something first.
plan-old = You have answered this already. Here is what comes now.
plan-whole-see = This is what people will see. Shall I tell them?
plan-change-see = This is what people will see from now on. Shall I tell them?
plan-publish = Publish and tell
plan-publish-change = Tell them the change
plan-change = Change something
plan-see = Show the day
plan-change-what = What shall be changed?
plan-part-date = Day and tide
plan-part-start = Hours
plan-part-spot = Place
plan-part-low-water = Low water
plan-part-meeting = Where we meet
plan-part-bring = What to bring
plan-part-contact = Whom to ask
plan-part-risks = Dangers
plan-part-title = Name
plan-leave = Leave it as it was
plan-left = The day stays as it was.
plan-same = Nothing is different from before, so I tell nobody.
plan-too-late = That time is over already. On which day shall it be?
plan-drop = Throw it away
plan-dropped = The day is thrown away. Nobody had heard of it.

cast-begins-announced = The day is published. I am telling those who asked. People in their night hear it at seven.
cast-begins-changed = I am telling those who heard of it before.
cast-begins-cancelled = The day is off. I am telling those who heard of it before.
cast-begins-result = I am sending the result to those who came.
cast-progress = { $state ->
    [done] All is told.
    [paused] Paused.
    [stopped] Stopped.
   *[running] I am telling people.
}
    Sent: { $sent }, waiting: { $waiting }, could not be reached: { $failed }.{ $minutes ->
    [0] {""}
    [one] {" "}About one minute left.
   *[other] {" "}About { $minutes } minutes left.
}
cast-pause = Pause
cast-go = Go on
cast-stop = Stop
cast-over = This is over already.

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
command-drafts = Your saved finds
command-cancel = Leave this find for now
command-help = What I can do
command-safety = The word on safety
command-region = Whose egg cases I tell apart
command-settings = Your time zone
command-days = Survey days to come
command-tellme = Hear of survey days
command-day = Plan a survey day
command-invite = Ask people to help
command-team = Who helps
command-review = Finds to be checked
command-forwarding = Records that are passed on
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
crib-length = { $from } to { $to } mm long, here { $middle } [{ $number }]
crib-width = { $from } to { $to } mm wide, here { $middle } [{ $number }]
crib-no-length = No length is published: the length drawn is a guess.
crib-no-width = No width is published: the width drawn is a guess.
crib-strings = Its strings are longer than drawn.
crib-half = Drawn at half size: it is too large for the page.
crib-alt = The egg case of { $label }, seen from above
crib-sources = Sizes are of whole cases without horns and strings. Where they are published:
