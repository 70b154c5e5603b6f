# Sentences that all regions share: cautions, and the questions before and after the key.

## Words for the buttons under every question

option-cant-tell = Can't tell
option-back = Back
option-why = Why?
option-correct = Change an answer

## What the shared drawings show

picture-parts = The drawing shows a case of a skate or ray with its horns, aprons, keel and capsule, and a slim case of a catshark with its strings.
picture-photo = The drawing shows a case twice, from the top and from the underside, with a coin or ruler beside it.
picture-soak = The drawing shows a case in a bowl of tap water.
picture-aprons = The drawing shows three cases: one with both aprons, one with one apron torn off, one without aprons.
picture-measuring-length = The drawing shows a ruler beside a case, from the border of one apron to the border of the other. The horns are crossed out.
picture-measuring-width = The drawing shows a ruler across a case, where it is widest, both blades with it. The horns are crossed out.
picture-taxon = The drawing shows a whole case: { $name }. It has { $seen }.
picture-taxon-worn = The drawing shows a worn case: { $name }. It has { $seen }. Pale, since it is lost: { $lost }.
picture-lost-horns = horns or strings
picture-lost-sides = the side edges
picture-lost-surface = the surface
picture-lost-aprons = the aprons
picture-stand-in = Its size is guessed.
card-photo = Photo, not to scale
card-photo-scaled = Photo, same scale
card-as-measured = As long as yours
card-as-measured-all = Each is drawn as long as yours.
card-usual = Usual size: { $mm } mm
card-usual-all = Each is drawn at a usual size.
card-bars = Bars: published lengths in mm.
card-mm = { $mm } mm
card-range = { $worth ->
    [memory] { $range }, from memory
   *[published] Published: { $range }
}
card-range-none = No length is published
card-yours = Yours: { $mm } mm, give or take { $plusMinus }
card-yours-least = Yours: at least { $mm } mm
card-more = { $count ->
    [one] And one other that fits.
   *[other] And { $count } others that fit.
}
card-lost = Pale, since it is lost: { $lost }.
card-found = Found on { $date }, { $place }
card-found-day = Found on { $date }
card-spot = { $latitude }, { $longitude }
card-square-grid = somewhere in grid square { $square }
card-square-degrees = somewhere in { $square } degrees
card-alone = Find no. { $number } as a card.
card-share = about { $percent } in 100
card-alt = The card shows { $photo ->
    [no] a drawing
    [scaled] your photo beside a drawing, both to one scale
   *[yes] your photo beside a drawing
} of a case: { $names }. Below it, lengths as bars.
card-alt-shortlist = The card shows { $photo ->
    [no] small drawings
   *[yes] your photo and small drawings
} of these cases: { $names }. Beside them, lengths as bars.
card-alt-line = { $name }: { $second }. { $words }.
drawn-horn = horn
drawn-apron = apron
drawn-capsule = capsule
drawn-blade = keel
drawn-string = string
drawn-skate = Skate or ray
drawn-catshark = Catshark
drawn-photo-top = The top, with a coin
drawn-photo-under = The underside, with a ruler
drawn-soak = Tap water, all of it under
drawn-aprons-both = Both there
drawn-aprons-one = One gone
drawn-aprons-none = Both gone
measuring-from = from this border
measuring-to = to this border
measuring-across = Across, where it is widest.
measuring-to-side = Blades count.
measuring-flat = Flat on a ruler.
measuring-left-out = Horns do not count.
picture-part = The drawing shows a whole case with a ring where to look: { $name }.
# What is filled in are the sentences of the options, seen-…
picture-choices-2 = The drawing shows two options. A: { $a }. B: { $b }.
picture-choices-3 = The drawing shows three options. A: { $a }. B: { $b }. C: { $c }.
picture-choices-4 = The drawing shows four options. A: { $a }. B: { $b }. C: { $c }. D: { $d }.
# A button with the letter that its option has in the picture; an en space stands between.
option-lettered = { $letter } { $label }

## Is it an egg case?

question-egg-case = Look at what you found. Is it a leathery pouch, flat or puffed up, with four corners that end in horns (stiff points) or curly strings? Some of them may have snapped off. A leathery screw counts, too.
option-egg-case-yes = Yes, like that
option-egg-case-no = No
why-egg-case = Sharks, skates and rays lay their eggs in tough cases. Each has four corners with horns or strings. When the young one has hatched, the empty case washes up on the beach.
name-egg-case = Egg case or not

question-tell-apart = Squeeze it gently and look at the cut or broken edge. What is it like?
option-tell-apart-pouch = A hollow leathery pouch
option-tell-apart-leaf = A leaf or stem of weed
option-tell-apart-solid = Solid, hard or spongy
why-tell-apart = An egg case is hollow, with two leathery faces that meet along the sides. Seaweed is leafy or has air bubbles inside. Other things of the beach are solid or spongy right through.
name-tell-apart = What it is like

question-what-else = Then let us see what it may be. Which is it most like?
option-what-else-leafy = Leaf, stem or air bubble
option-what-else-balls = A clump of papery balls
option-what-else-chalky = White, chalky and oval
option-what-else-made = Plastic, rope or rubber
why-what-else = Many things of the strandline (the line of bits that the last tide left) look like egg cases when they are dry and brown.
name-what-else = What else it is

# Things of the strandline: common knowledge of the shore, from memory.
question-weed = That sounds like dried seaweed. Some seaweeds have leathery flaps or air bubbles that look like little pouches, but they have no four corners. Small animals of the beach live under it, so please put it back where it lay.
question-whelk = That sounds like the egg clump of a whelk or another large sea snail: many papery or leathery pouches stuck together, without horns or strings. An empty clump is light and dry. Please leave a fresh, wet one where it is.
question-cuttlebone = That sounds like a cuttlebone, the inner shell of a cuttlefish: white and chalky, light enough to float, and without corners. Cuttlefish do not live along every coast. Where there are none, it may be a worn piece of shell, coral or foam.
question-plastic = That sounds like something made by people. Throw it away with other waste if it is safe to touch. Leave metal boxes, flares, bottles with something in them, needles and anything you do not know: stand back, keep children away and tell the coast guard or whoever looks after the beach.
question-other = Then I cannot say what it is. It may be a sponge, a sea squirt, a piece of bark or leather. I only know egg cases. If it could be dangerous, do not touch it.
option-end-fresh = Look at another find
option-end-walk = One more of this walk
option-end-another-bowl = One more of this bowl
said-nothing-kept = Nothing was stored.

## Alive?

question-alive = Is anything still living in it? Hold it up to the light, do not open it. Is it heavy, full or closed, does something move, or is it tied to weed or rock?
option-alive-empty = No, empty and light
option-alive-inside = Something may be inside
option-alive-attached = Tied to weed or rock
why-alive = A young shark, skate or ray may grow in its case for months, some for more than a year. An empty case is light, and one end is open or split. If you are not sure, treat it as alive.
name-alive = Alive or empty

question-leave = Thank you for checking. Please leave it in the sea: put it back in the water or in a deep rock pool near where it lay, out of the sun, and do not soak or open it. Leave a tied one just as it is. I would still like a photo and the place.
option-leave-go-on = Done, go on
question-photo-live = Can you take a photo of it where it is, without touching it again? Only if you are safe there.
name-photo-live = Photo
name-where-live = Place
name-when-live = Day

## Photo

question-photo = Please send a photo of the top and one of the underside. Lay a ruler or a coin beside the case, on a plain surface.
question-photos-so-far = { $count ->
    [one] I have one photo. Send more, or go on.
   *[other] I have { $count } photos. Send more, or go on.
}
option-photo-skip = No photo, go on
option-photo-go-on = Go on
why-photo = The person who checks your find looks at the photos first. The top and the underside of a case can look quite different, and something of known size shows how big it is. I remove hidden data such as the position before I store a photo.
why-photo-live = A photo helps the person who checks your find. I remove hidden data such as the position before I store it.
name-photo = Photos
help-photos = Please send a photo here, or press the button to go on.
said-photo-added = I added the photo to this find.

## Place

question-where = Where did you find it? Share your position or a pin from the map, or write a grid reference (SW 465 304), a latitude and longitude (50.12, -5.53), or the name of the beach.
question-where-photo = Where did you find it? The file of your photo says: { $at }, within { $uncertainty } metres. Take that only if the case lay there, not if you took the photo at home. Or share your position or a pin, or write a grid reference (SW 465 304) or the name of the beach.
option-here = Send where I am now
option-photo-place = Where my photo was taken
said-photo-told = Your photo is here. Its file also says when or where it was taken.
why-where = Which kinds live nearby differs from coast to coast, and a record without a place is of little use. The place is used for the record alone. You can change or delete it later.
name-where = Place
ask-position = Press the button below this chat to send where you are now. You can also share a pin, or write the place.
ask-position-group = Please reply to this message with your position: the paper clip, then the place.
option-send-position = Send my position
help-place-odd-digits = “{ $heard }” looks like a grid reference, but it has an odd number of digits. It needs as many digits for east as for north, such as SW 465 304.
help-place-uneven-digits = “{ $heard }” looks like a grid reference, but the two numbers are not equally long. Write them alike, such as SW 465 304.
help-place-no-such-square = “{ $heard }” looks like a grid reference, but there is no such square. Look at the two letters again.
help-place-too-many-digits = “{ $heard }” has more digits than a grid reference can have. Five for east and five for north are the most.
help-place-off-the-earth = “{ $heard }” is not a place on the map. Latitude goes from -90 to 90, longitude from -180 to 180. A grid reference begins with its letters.
help-place-half-a-pair = I see only one number in “{ $heard }”. Write latitude and longitude, such as 50.12, -5.53.
help-place-too-long = That is too long for a place. The name of the beach and the nearest town are enough.
help-place-empty = Please write the name of the beach, or share your position.
help-pin-later = Thank you. I do not need a place for this question. You can change the place of a find at the end.

## Day

question-when = Which day did you find it? Press a button, or write the day, such as 2 May or 2/5/2026.
option-when-today = Today
option-when-yesterday = Yesterday
option-photo-date = Photo: { $date }
why-when = Different kinds wash up at different times of the year. A record needs its day.
name-when = Day
help-date-not-a-date = I cannot read “{ $heard }” as a day. Write it like 2 May, 2/5/2026 or 2026-05-02.
help-date-future = “{ $heard }” is still to come. Which day did you find it?
help-date-too-old = “{ $heard }” is too long ago to be right. Please write the day again.

## How many

question-count = How many cases just like this one did you find? Count only those that look the same and are about as long.
option-count = { $count }
why-count = Each kind gets a record of its own. Cases that look different are best taken one after the other.
name-count = How many
help-count = Please write a number, such as 3.
help-count-many = That is a lot. I can note at most { $most } in one find.

## What is broken

question-broken = What is missing or broken? Press all that apply, then go on. Press “horns” only if you cannot see one whole horn or string.
option-part-horns = { $marked ->
    [yes] ✓ Horns or strings gone
   *[no] Horns or strings gone
}
option-part-sides = { $marked ->
    [yes] ✓ Side edges torn off
   *[no] Side edges torn off
}
option-part-surface = { $marked ->
    [yes] ✓ Surface worn smooth
   *[no] Surface worn smooth
}
option-parts-whole = All there, go on
option-parts-done = Go on
chosen-parts = { $count ->
    [one] one part gone
   *[other] { $count } parts gone
}
why-broken = Waves and sand break the horns first and rub the surface smooth. I will not ask about a part that is gone.
name-broken = What is broken

## Dry or soft, and the bowl

question-condition = How does the case feel now?
option-condition-dry = Dry and stiff
option-condition-damp = Still damp
option-condition-soft = Soaked and soft
# capsules.json, strandlineChanges: no shrinkage figure was published; soaking common practice
why-condition = Egg cases shrink and curl up as they dry. Nobody has published by how much, so a dry one is soaked before it is measured.
name-condition = Dry or soft

# common practice: tap water, at least two hours or overnight
question-soak = Put the case in a bowl of tap water for at least two hours. Overnight is fine. It grows back to its size and opens out. I will tell you when it is time. How long shall it soak?
option-soak-two-hours = Two hours
option-soak-overnight = Overnight
option-soak-already = It is soaked already
option-soak-unsoaked = Go on without soaking
why-soak = A soaked case is soft, flat and nearly as large as when it was laid, so that its length can be compared. If you measure it dry, I note that, and the length counts as “at least so long”.
name-soak = Soaking

question-morning = When shall I write to you in the morning?
option-hour = { $hour }
why-morning = I never write between 22:00 and 07:00.
name-morning = Hour of the morning

question-soaking = The case is in the bowl since { $since }. I will write to you at { $due }. You can look for other finds in the meantime.
option-soaking-go-on = It is soft now
option-soaking-another = Add a case to this bowl
why-soaking = Two hours in tap water make most cases soft. Thick or very dry ones take a night. I never write between 22:00 and 07:00.
help-soaking = I wait for the bowl. Press a button, or write /bowl to see what is soaking.
name-soaking = The bowl

question-softness = Your bowl is ready. Take the case out and bend it gently. Is it softer now?
option-softness-softer = Softer now
option-softness-stiff = Still stiff: one hour
option-softness-tomorrow = Tomorrow morning
why-softness = A soft case can be laid flat for measuring, and nothing snaps off.
name-softness = Softness
said-bowl-also = { $count ->
    [one] One more case of this bowl is waiting in /bowl.
   *[other] { $count } more cases of this bowl are waiting in /bowl.
}
said-late = I could not write at { $due }, as I said I would. I am sorry.

## Measuring

question-aprons = An apron is the flat flap between the two horns of one end. Are both aprons still there, with their borders?
option-aprons-both = Both are there
option-aprons-one-gone = One is torn off
option-aprons-both-gone = Both are torn off
# capsules.md, "Read this first": 71 of 111 mm, 75 of 122 mm, 133 of 174 mm
why-aprons = The length is measured from the border of one apron to the border of the other. Without its aprons a case can be a quarter to two fifths shorter, so I must know. A slim case with strings has hardly any apron: if its ends look whole, press “both are there”.
name-aprons = Aprons

question-length = How long is the capsule? Measure along the middle, from the border of one apron to the border of the other, without horns and strings. Write it like 62 mm, 6.2 cm or 2 3/8 in. Or send a photo of the case on a plain white A4 sheet: I measure it for you. Several cases on one sheet are fine.
question-length-grown = How long are they now? In water cases grow back to their size, so your photo from before no longer counts. Lay the same ones on the sheet again and send a photo. Or measure one that is as long as most, from the border of one apron to the border of the other, and write it like 62 mm.
question-length-dry = How long is the capsule, dry as it is? Measure along the middle, from the border of one apron to the border of the other, without horns and strings. Write it like 62 mm, 6.2 cm or 2 3/8 in. Or send a photo of the case on a plain white A4 sheet: I measure it. I will note “measured dry”.
option-cant-measure = I can't measure it
why-length = The length says more than any other thing, but only when horns and strings are left out: they break, and some are longer than the case. Lay the case flat without pulling it.
name-length = Length
question-width = How wide is the capsule at its widest, with the thin blades along the sides? Write it like 40 mm or 4 cm.
why-width = Two kinds look alike here, and one is much wider than the other. So the width settles it.
name-width = Width
question-unit = “{ $typed }”: in which unit did you measure?
option-unit-mm = { $typed } mm
option-unit-cm = { $typed } cm
option-unit-in = { $typed } inches
help-length-not-a-number = I cannot read “{ $typed }” as a length. Write it like 62 mm, 6.2 cm or 2 3/8 in.
help-length-too-short = “{ $typed }” would be { $mm } mm. No egg case here is that small: I can take { $least } to { $most } mm. Please look at the ruler again, and write the unit.
help-length-too-long = “{ $typed }” would be { $mm } mm. No egg case here is that large, even the longest: I can take { $least } to { $most } mm. Leave out horns and strings, and write the unit.
help-length-range = The two numbers in “{ $typed }” are too far apart for one measurement. Please measure once more.
help-length-several = I see two measurements in “{ $typed }”. Please send only the one I asked for.
# Sizes and tilts: common practice for a phone held over a table.
said-measuring = I am measuring your photo. That takes a moment. You can also write the length.
chosen-photo = Your photo
question-measured = { $has ->
    [length] I measured { $mm } mm, give or take { $plusMinus }.
    [width] I measured { $width } mm across, give or take { $widthPlusMinus }.
   *[both] I measured { $mm } mm, give or take { $plusMinus }, and { $width } mm across, give or take { $widthPlusMinus }.
}{ $unsure ->
    [0] {""}
   *[other] {" "}What has a question mark I could not measure.
} Look at the lines on your photo. Do they end at the borders of the case, without horns and strings?
question-which-line = Two edges could be the end of your case. With line A it is { $mm } mm long, with line B { $otherMm } mm. Which line ends at the border of the apron, without horns and strings?
option-measured-right = That's right
option-measured-line-a = Line A, { $mm } mm
option-measured-line-b = Line B, { $otherMm } mm
option-measured-not-quite = Not quite
picture-measured = Your photo with lines drawn where I measured: { $mm } mm from border to border.
help-photo-or = { $instead ->
    [none] {""}
    [width] {" "}Or write the width.
   *[length] {" "}Or write the length.
}
help-photo-no-reference = I see nothing of known size in the photo. Lay a plain white A4 sheet under the case, hold the phone flat above, and take in the whole sheet.{ help-photo-or }
# photo-measuring of this house, section 7: one coin, 5° of tilt costs 3 %, 10° 7 %.
help-photo-coin = A coin tells no length: a little tilt already costs 3 to 7 in 100.{ $about ->
    [yes] {" "}About { $low } to { $high } cm, I would say, but I do not note that.
   *[no] {""}
} Next time lay a bank card beside the case, face down, or a plain white A4 sheet under it.{ help-photo-or }
help-photo-letter = That looks like a sheet of Letter paper, and I know only A4. Lay a bank card beside the case, face down, or print the measuring sheet with /sheet.{ help-photo-or }
help-photo-wrong-reference = What lies in the photo is not of a size that I know. Use a plain white A4 sheet under the case, or a bank card face down beside it.{ help-photo-or }
help-photo-sheet-wrong = Your measuring sheet is not printed at its true size, so I do not measure by it. Write /sheet for a new one and print it at 100 %, or use a plain white A4 sheet.{ help-photo-or }
help-photo-no-case = I do not find an egg case in the photo. Lay it on a plain white A4 sheet, with nothing else on the sheet, the phone flat above.{ help-photo-or }
help-photo-cut-off = Something is cut off. Take in the whole sheet and the whole case, and send the photo again.{ help-photo-or }
help-photo-several = I see several things. Lay one case alone on the sheet and send the photo again.{ help-photo-or }
help-photo-dark = The photo is too dark. Go to a window and send it again.{ help-photo-or }
help-photo-small = The case is too small in the photo. Go nearer, so that the sheet fills it, and send it again.{ help-photo-or }
help-photo-far = The card is too small in the photo, or too far from the case, to measure by. Lay it close beside the case, go nearer, and send the photo again.{ help-photo-or }
help-photo-tilted = The phone was held aslant. Hold it flat above the sheet and send the photo again.{ help-photo-or }
help-photo-blurred = The photo is blurred. Hold the phone still, tap the case on the screen so that it is sharp, and send the photo again.{ help-photo-or }
help-photo-unsure = I cannot tell where the case ends in this photo. Go to a window, so that there is no hard shadow, hold the phone still, and send the photo again.{ help-photo-or }
help-photo-unreadable = I cannot read this photo. Send it again as a photo, not as a file.{ help-photo-or }
help-photo-no-width = I cannot tell how wide the case is in this photo. Please write the width.
help-photo-impossible = What I measured is the size of no egg case here, so I measured something else. Lay the case alone on a plain white A4 sheet and send the photo again.{ help-photo-or }
help-photo-failed = I could not measure this photo. Send it once more.{ help-photo-or }

# The print of the measuring sheet
question-print = You used the measuring sheet. Is the line on your sheet exactly 100 mm long? Lay a ruler on it, or a bank card on its outline: the card must fill it exactly.
why-print = Many printers make a page a little smaller, so that it fits, by 3 to 6 in 100. Nothing in the photo shows that, and every length would be wrong. I ask only once for each sheet.
option-print-exact = Yes, it is
option-print-wrong = No
option-print-unsure = I can't check
said-print-unsure = Then each length may be off by 6 in 100 more, and I note that with it. I do not ask again for this sheet.
said-print-wrong = Then I do not use these lengths. Write /sheet for a new sheet and print it at 100 %, not “fit to page”. Or lay the cases on a plain white A4 sheet.

# A tray: many cases in one photo
question-tray-photo = Soak dry cases first, they have shrunk. Then lay all your cases on a plain white A4 sheet, a finger apart. A measuring sheet is fine, too. Hold the phone flat above, take in the whole sheet, and send me one photo of all.
said-measuring-tray = I am looking for the cases in your photo. That takes a moment.
question-tray = { $rest ->
    [yes] { $count } cases are left, { $least } to { $most } mm long.
   *[no] I measured { $count } cases, { $least } to { $most } mm long. What has no number is not counted.
} { $unsure ->
    [0] {""}
    [one] One thing I could not measure: it has a question mark.{" "}
   *[other] { $unsure } things I could not measure: they have question marks.{" "}
}Which of these are one kind? Press their numbers, then “These are one kind”.

    In mm: { $list }
question-tray-one = { $rest ->
    [yes] One case is left: no. { $first }.
   *[no] I measured one case.
} It is { $list } mm long, give or take { $plusMinus }.{ $unsure ->
    [0] {""}
    [one] {" "}One thing more I could not measure: it has a question mark.
   *[other] {" "}{ $unsure } things more I could not measure: they have question marks.
} Shall we look at it?
question-tray-empty = No case is left on this photo. Send another photo of all, or press “Never mind”.
question-tray-spread = These are { $least } to { $most } mm long. Cases of one kind seldom differ so much. Are they really one kind?
question-tray-wrong-line = Which line lies wrong? It has to end at the borders of the case, without horns and strings. I take that number out. You can look at that case by itself later.
question-tray-left = { $shown ->
    [yes] I leave these cases. Nothing of them is kept.
   *[no] All right. Nothing is kept.
}
why-tray = Each kind gets a record of its own, with how many there were and how long each is. You know best which look alike: shape, horns or strings, size. What I suggest is only a guess from the outline.
picture-tray = Your photo with { $count } cases, each with its number and a line where I measured. In mm: { $list }.
option-tray-number = { $picked ->
    [yes] ✓ { $number }
   *[no] { $number }
}
option-tray-group-long = Long ones: { $numbers }
option-tray-group-broad = Broad ones: { $numbers }
option-tray-group-all = All { $count }
option-tray-one-kind = These are one kind
option-tray-not-quite = Not quite: a line is off
option-tray-leave = Leave them all
option-tray-leave-rest = Leave the rest
option-tray-take-one = Yes, look at it
option-tray-leave-one = Leave it
option-tray-never-mind = Never mind
option-tray-spread-yes = Yes, one kind
option-tray-again = No, choose again
option-tray-all-right = All lines are right
chosen-tray-set = { $count ->
    [one] no. { $numbers }
   *[other] { $count } cases: no. { $numbers }
}
chosen-tray-out = no. { $number } is taken out
chosen-tray-left = left
said-tray-set = { $count ->
    [one] Now take case no. { $numbers } in your hand. The next questions are about it.
   *[other] Now take one of these in your hand: no. { $numbers }. The next questions are about these { $count } cases.
}
help-tray-none = First press the numbers that look alike. They get a tick.
help-tray-numbers = I see no such number on your photo. Press a button, or write the numbers, such as 1, 3.
help-tray-photo = Please send one photo of all your cases, or press a button.
chosen-length = { $mm } mm, give or take { $plusMinus }
chosen-text = { $text }
chosen-date = { $date }
chosen-spot = { $at } (within { $uncertainty } m)

## Result

question-result = { $result }
option-result-keep = Save this find
option-result-correct = Change an answer
option-result-throw = Throw it away
why-result = { $result }
question-live-result = A live egg case, left where it is. That is the best thing you could do. I note the place, the day and your photos, and no name. Shall I save it?
option-live-result-keep = Save this find
option-live-result-correct = Change an answer
option-live-result-throw = Throw it away
question-correct = Which answer do you want to give anew? The others stay.

sure-very-likely = Very likely: { $name }
sure-likely = Likely: { $name }
sure-shortlist = I cannot say for sure. These fit best:
sure-unknown = I do not know an egg case like this one. Your photos and notes still help: save it, and somebody looks at it.
result-name = { $name } ({ $scientific }), about { $percent } in 100
result-else = Something I do not know, about { $percent } in 100
result-also = Less likely, but possible: { $names }.
result-nearest = What I know comes no nearer than this: { $names }.
result-also-name = { $name } (about { $percent } in 100)
result-also-else = something I do not know
result-scientific = { $scientific }, about { $percent } in 100
result-for = What speaks for it: { $seen }.
result-against = What speaks against it: { $seen }.
result-each = Your { $count } cases are { $least } to { $most } mm long. I compare the middle one.
result-length = Its length is { $mm } mm, give or take { $plusMinus }.
result-length-least = Its length is at least { $mm } mm ({ $because }).
result-width = Its width is { $mm } mm, give or take { $plusMinus }.
result-width-least = Its width is at least { $mm } mm ({ $because }).
because-dry = measured dry
because-aprons = an apron is gone or unsure
because-sides = its side edges are torn off
result-range = { $ends ->
    [one] { $low } mm
   *[two] { $low } to { $high } mm
}
result-range-length = { $worth ->
    [memory] Length { $range }, from memory and not yet checked in any source
   *[published] Published length { $range }
}: { $fits ->
    [yes] it fits.
   *[no] it does not fit.
}
result-range-width = { $worth ->
    [memory] Width { $range }, from memory and not yet checked in any source
   *[published] Published width { $range }
}: { $fits ->
    [yes] it fits.
   *[no] it does not fit.
}
result-unusual = Unusual on this coast, so I mark it for the person who checks: { $names }.
result-settles-character = What would settle it: { $what }.
result-settles-length = What would settle it: the length of the soaked case, from apron border to apron border.
result-settles-width = What would settle it: the width at the widest place.
result-settles-photo = What would help most now: good photos of both sides, for the person who checks it.
result-fact = { $fact } (Source: { $source })
result-fact-memory = { $fact } (From memory: nobody has checked it in a source yet.)
result-doubt = You were not sure that it is an egg case, so I note that too.
result-not-final = A person who knows egg cases will look at it. Until then it is a draft.

## Ends

question-kept = Saved as a draft. Thank you. Your find now has the number { $number }. You can see and change it with /drafts.
question-thrown = Thrown away. Nothing of this find is kept as a record.
said-mended = The draft is changed.
question-note = Write a note for this find, up to 500 letters. Please write no names of children.
help-note = Please write a note of 1 to { $most } letters.
name-note = Note

## Help in the middle of a question

help-buttons = Please press one of the buttons. If none of them fits, press “Can't tell” where there is one, or “Back”.
said-moved-on = That question is already answered. Here is where we are now.
help-odd-voice = I cannot listen to voice messages. Please press a button or write.
help-odd-video = That is a video. Please send a photo.
help-odd-sticker = That is a nice sticker. Here is the question again.
help-odd-file = I cannot use this kind of file. Please send a photo.
help-odd-heic = I cannot read this kind of picture file. Please send it as a photo, not as a file.
help-odd-large = This file is too large for me: 20 MB is the most. Please send it as a photo.
help-odd-command = I do not know that command. Write /help to see what I can do.
help-odd-other = I cannot use that here. Please press a button, write, or send a photo.
help-odd-edited = You changed an earlier message. I cannot follow that. To change an answer, press “Back”, or “Change an answer” at the end.
