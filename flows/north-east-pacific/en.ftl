# The sentences of the eastern North Pacific in English. Facts about animals are said in our own
# words; their sources stand in profiles.yaml. Button labels have at most 24 characters.

region-name = Eastern North Pacific
# Reserves and signs, not taking cases from the sea bed, large waves and logs: common practice.
region-safety = Some beaches, parks and reserves have their own rules about taking things home: read the signs, and when in doubt only take a photo. Cases on the sea bed stay there. Face the sea while you look: large waves come without warning, and they can move big logs.
# common practice
region-emergency = If someone is in danger, call 911 and ask for the coast guard.
# common practice
region-tides = Tide times: use the official tables of the national hydrographic or tide office. I do not work out tides.

## twist

name-twist = Twisted or flat
question-twist = Does a flat blade wind round and round the case, like the thread of a screw? Or is it a pouch with two faces?
option-twist-screw = Twisted like a screw
option-twist-flat = A flat or puffed pouch
seen-twist-screw = a case twisted like a screw
seen-twist-flat = a pouch with two faces, not twisted
# from memory
why-twist = One shark of this region lays cases like a screw, with a flat blade that winds round them. They have no horns and no strings. Nothing else here looks like that, so it comes first.

## corners

name-corners = Corners
question-corners = Look at the four corners. Are there thin strings that curl up, stiff hooks or points, or only whole, short stubs of at most 2 cm (0.8 inch)?
option-corners-strings = Curly strings
option-corners-hooks = Stiff hooks or points
option-corners-stubs = Only short whole stubs
seen-corners-strings = curly strings at the corners
seen-corners-hooks = stiff hooks or points at the corners
seen-corners-stubs = only short stubs at the corners
# grover1974, abstract (lengths of strings); ebertdavis2007, p. 3-14 (horns of skates)
why-corners = Tendrils are strings that hold the case on to seaweed. Only one shark here has them, and not everywhere: in some places its cases have no string over 2 cm. So short stubs need not be damage. Stiff horns belong to skates. If the corners look torn off, say that you can't tell.

## string-length

name-string-length = Length of the strings
question-string-length = Stretch the longest string out gently beside the case. Is it longer than two cases, one after the other?
option-string-length-twice = Longer than two cases
option-string-length-less = Two cases or less
seen-string-length-twice = a string longer than two cases
seen-string-length-less = strings of at most two cases' length
# grover1974, abstract (two metres); ebertdavis2007, p. 9-10 (1.4 times the case)
why-string-length = The strings of a swell shark's case can be up to two metres long. The stiff horns of some skates end in thin threads too, but even the longest is less than one and a half times as long as its case. If the string has snapped off, say that you can't tell.

## keel

name-keel = Keel along the sides
question-keel = Measure one blade along the side where it is widest, then the whole case across, both blades with it. Is the blade wider than a tenth of the case? On a case 70 mm wide, that is 7 mm.
option-keel-broad = Broad: over a tenth
option-keel-narrow = Narrow: less than that
option-keel-none = No blade at all
seen-keel-broad = a broad blade along both sides
seen-keel-narrow = a narrow blade along both sides
seen-keel-none = no blade along the sides
# ebertdavis2007, abstract and p. 3-14
why-keel = All ten skates described from this region lay cases with a keel. In some it is broad, and their cases are mostly smooth with fine lines. In others it is narrow, and most of those are rough. Narrow keels can break away on the beach.

## horn-length

name-horn-length = Longest horn
question-horn-length = Follow the longest horn along its curve to its tip. Is it longer than three quarters of the case without its horns?
option-horn-length-long = Over three quarters
option-horn-length-short = Shorter than that
seen-horn-length-long = a horn over three quarters as long as the case
seen-horn-length-short = horns much shorter than the case
# ebertdavis2007, p. 5-6, 9-12
why-horn-length = Three kinds with broad keels are of the same size here. In two of them the longest horns are about as long as the case, in the third only about half as long. Thin tips break first. If the tip is gone and the horn is short, say that you can't tell.

## rim-fibres

name-rim-fibres = Hairs along the sides
question-rim-fibres = Hold the thin blade along both sides up to the light. Some cases have fine hairs there, which hold sand. Where are the hairs?
option-rim-fibres-whole = Along the whole side
option-rim-fibres-part = Only on part of it
option-rim-fibres-none = No hairs
seen-rim-fibres-whole = hairs along the whole side
seen-rim-fibres-part = hairs on only a part of the side
seen-rim-fibres-none = no hairs along the sides
# ebertdavis2007, p. 5-14
why-rim-fibres = Fine hairs hold a case to the ground where it was laid. In some kinds they grow along the whole keel, in others they begin half way or only at a horn, and some have none. Hairs rub off on the beach, so look in sheltered spots, such as the corner between keel and horn.

## lines

name-lines = Lines on the surface
question-lines = Wet the case and let light fall on it from the side. Are there strong lines from end to end, to be seen at arm's length and felt with a fingernail?
option-lines-strong = Strong lines
option-lines-fine = Fine lines or smooth
seen-lines-strong = strong lines from end to end
seen-lines-fine = fine lines, or a smooth surface
# ebertdavis2007, p. 5-6, 9-10
why-lines = Two kinds of the same size both have long horns and broad keels. One has strong lines from end to end, the other only fine ones, with thin hairs on its top.

## ridges

name-ridges = Two ridges on top
question-ridges = Run a finger across the more domed face of the case. Do two strong ridges stand out there, like folds under a cloth?
option-ridges-two = Two strong ridges
option-ridges-none = No such ridges
seen-ridges-two = two strong ridges on the domed face
seen-ridges-none = no strong ridges on the domed face
# ebertdavis2007, p. 10-11; that the ridges run lengthwise, as drawn, is from memory
why-ridges = Only the largest case of this region has two strong ridges on its domed face. A small or torn case of that kind can be as short as that of another skate, and the ridges still show.

## feel

name-feel = Rough or smooth
question-feel = Stroke the case with a wet fingertip, lightly, from end to end and back. Is it rough like sandpaper, or smooth or soft like cloth?
option-feel-rough = Rough, with points
option-feel-smooth = Smooth or soft
seen-feel-rough = a rough surface with points
seen-feel-smooth = a smooth or soft surface
# ebertdavis2007, abstract and p. 3-7
why-feel = The cases with narrow keels are mostly very rough, some with points that all lean one way. A smooth case of this length without a broad keel is more likely one that lost its keels on the beach.

## groove

name-groove = Groove at the keel
question-groove = Does a groove, like a narrow ditch, run where the thin blade along the side meets the body of the case?
option-groove-groove = A groove runs there
option-groove-none = No groove
seen-groove-groove = a groove between keel and body
seen-groove-none = no groove between keel and body
# ebertdavis2007, p. 3-4
why-groove = In one skate of very deep water a groove parts the keel from the body of the case. No other case of this region has it.

## underside

name-underside = The underside
question-underside = Feel both faces with wet fingers. Is the flatter one, the underside, like the domed one, or clearly smoother, with less fur?
option-underside-alike = Both faces alike
option-underside-smoother = The underside smoother
seen-underside-alike = an underside that feels like the top
seen-underside-smoother = an underside smoother than the top
# ebertdavis2007, p. 8-9, 12-14
why-underside = Some cases have thick, woven-looking fur on top and a smooth underside. In one kind of very deep water both faces feel alike, like plush cloth. Fur rubs off, so look for what is left near the horns.

## taxa

taxon-heterodontus-francisci = Horn shark
fact-heterodontus-francisci = A horn shark's case is a screw: a flat blade winds round it from end to end.
taxon-cephaloscyllium-ventriosum = Swell shark
fact-cephaloscyllium-ventriosum = In one place swell shark cases have strings of up to two metres, in another, which can be as little as 30 kilometres away, none is over two centimetres.
taxon-bathyraja-abyssicola = Deepsea skate
fact-bathyraja-abyssicola = Deepsea skates live from 362 down to 2,906 metres, mostly below 1,000.
taxon-bathyraja-aleutica = Aleutian skate
fact-bathyraja-aleutica = Aleutian skates live from the Bering Sea to northern California.
taxon-bathyraja-kincaidii = Sandpaper skate
fact-bathyraja-kincaidii = Sandpaper skates live from the Gulf of Alaska to California.
taxon-bathyraja-microtrachys = Fine-spined skate
fact-bathyraja-microtrachys = Fine-spined skates live below about 2,000 metres.
taxon-bathyraja-spinosissima = Pacific white skate
fact-bathyraja-spinosissima = Only one case of a Pacific white skate has been described, and for a long time it went under another kind's name.
taxon-bathyraja-trachura = Roughtail skate
fact-bathyraja-trachura = In about two out of three roughtail skate cases a bar joins the two back horns half way along.
taxon-beringraja-binoculata = Big skate
fact-beringraja-binoculata = From two to seven young big skates grow in one case, usually three or four.
taxon-caliraja-inornata = California skate
fact-caliraja-inornata = The California skate cases that were described had been laid in captivity, in July and August.
taxon-caliraja-rhina = Longnose skate
fact-caliraja-rhina = The mothers of the longnose skate cases that were described came from 91 to 488 metres down.
taxon-caliraja-stellulata = Pacific starry skate
fact-caliraja-stellulata = All the Pacific starry skate cases that were described came from one mother, caught at 88 metres.
