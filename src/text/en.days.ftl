# Survey days and telling people, in English.

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
day-result = What came of { $title } at { $place }, { $date }:
day-result-count = { $finds ->
    [0] Nobody has saved a find yet.
   *[other] { $finds ->
        [one] One find
       *[other] { $finds } finds
    }, with { $cases ->
        [one] one case
       *[other] { $cases } cases
    }, saved by { $finders ->
        [one] one person.
       *[other] { $finders } people.
    }
}
day-result-people = { $heads ->
    [one] One person said that they come, for { $hours } hours.
   *[other] { $heads } people said that they come, for { $hours } hours: about { $together } hours of looking.
}
day-result-heading = { $title }, { $date }
day-result-map = Where it was found.
day-result-there = { $title } is over. The finds made there that day are gathered. People may still be saving some.
day-result-early = The day is not over yet. Look again when it is.
day-result-sent = The result has gone out already.
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
# What a typed low water is held against. Only the coordinator sees it, before the day is published.
plan-tide-fits = Only you see this. An estimate for { $station }, about { $away } km away, has low water around { $low }. That fits yours. Never go by an estimate: what counts is the official table.
    { $attribution }
plan-tide-differs = Only you see this. An estimate for { $station }, about { $away } km away, has low water around { $low }. Yours differs by { $hours ->
    [0] { $minutes } min
   *[other] { $hours } h{ $minutes ->
        [0] {""}
       *[other] {" "}{ $minutes } min
    }
}: look again in the official table, at the day, the place and summer time. If it says what you wrote, leave it: an estimate can be wrong.
    { $attribution }
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
plan-poster = Make a poster
plan-poster-link = I am making the poster. Its code opens this link, which you may also send on: { $link }
plan-poster-no-link = Posters need a bot on the real platform, since their code opens a link there. Here people can write: /start { $code }
parcel-poster = The poster, one page to print. It is public from the moment you put it up.
plan-result = See the result
plan-send = Send it to who came
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

