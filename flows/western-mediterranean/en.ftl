# The sentences of the western Mediterranean in English. Facts about animals are said in our own
# words; their sources stand in profiles.yaml. Button labels have at most 24 characters.

region-name = Western Mediterranean
# common practice; no protected ground of the region stands in the sources read
region-safety = Some beaches and reserves have their own rules about taking things home: read the signs, and when in doubt only take a photo. Cases on the sea bed stay there. Watch the waves, even where there is hardly a tide.
# common practice
region-emergency = If someone is in danger, call 112. It works in every country of the European Union. In other countries, look up the number for help at sea before you go.
# common practice
region-tides = Tides are small in the Mediterranean, but wind and waves can still cover a beach. For tides and sea state, use the official tables and forecasts of the national hydrographic or weather office. I do not work out tides.

## outline

name-outline = Slim or broad
question-outline = Lay the case flat and leave out its corners. Is it longer than two of its widths, one after the other?
option-outline-slim = Longer than two widths
option-outline-broad = Two widths or less
seen-outline-slim = a slim case, more than twice as long as wide
seen-outline-broad = a broad case, at most twice as long as wide
# Lengths and widths in profiles.yaml: sharks 2.4 to 2.8, skates and rays 1.2 to 1.9 times as
# long as wide, the Norwegian skate about 2.1.
why-outline = The case without its corners is called the capsule. The small sharks of this region lay slim capsules, well over twice as long as wide. Skates and rays lay broad ones; only one great deep-water skate comes close to two widths. You can still see this when every corner has broken off, so it comes first.

## corners

name-corners = Corners
question-corners = Look at the four corners. Are there thin strings that curl up, or stiff hooks or points?
option-corners-strings = Curly strings
option-corners-hooks = Stiff hooks or points
seen-corners-strings = curly strings at the corners
seen-corners-hooks = stiff hooks or points at the corners
# gordon2016, p. 271-272
why-corners = Tendrils are strings that hold the case on to seaweed. One small slim case of this region has no tendrils, only short hooks, and nothing else tells it from its neighbour. A large case with stiff points belongs to a skate or ray. If all four corners are gone, say that you can't tell.

## keel

name-keel = Keel along the sides
question-keel = A keel is a thin flat blade that stands out from the side, like the brim of a hat. Is there one along the sides?
option-keel-blade = Yes, a thin blade
option-keel-none = No blade at all
seen-keel-blade = a thin flat blade along both sides
seen-keel-none = no blade along the sides
# porcu2017, abstract (brown ray and Maltese skate without, six others with keels)
why-keel = A keel is part of the case from the day it is laid, and some kinds have none. So it splits the skates and rays into two groups. Thick keels last on the beach, thin ones can break away.

## front-flap

name-front-flap = Border of the apron
question-front-flap = An apron is the flat flap between two horns. Look at the larger one. Does its outer border bulge outwards, or run straight?
option-front-flap-bulging = It bulges outwards
option-front-flap-straight = It runs straight
seen-front-flap-bulging = a larger flap that bulges outwards
seen-front-flap-straight = a larger flap with a straight border
# gordon2016, p. 263, 269
why-front-flap = The larger apron is at the front of the case. Some kinds without keels look alike once their horns are broken. In some of them the front apron bulges outwards, in others it is broad and straight. If the border is torn, say that you can't tell.

## surface-hairs

name-surface-hairs = Hairs on the surface
question-surface-hairs = Wet the case and look at both faces. Are there fine hairs or threads that a fingernail can lift? A few in a sheltered spot are enough.
option-surface-hairs-hairy = Fine hairs or threads
option-surface-hairs-smooth = Smooth, no hairs
seen-surface-hairs-hairy = fine hairs on the surface
seen-surface-hairs-smooth = a smooth surface without hairs
# capsules.json, Leucoraja melitensis (surface smooth, without fibres; abstract of porcu2017 and
# a statement citing it) and its lookalikes
why-surface-hairs = Many cases are laid with a thin coat of hairs. Two small kinds of this region have no keels and about the same shape. Hairs were described for one of them, and the other is smooth. Hairs rub off on the beach, so if the surface is worn, say that you can't tell.

## edge

name-edge = Rim along the sides
question-edge = Hold the rim along the long sides up to the light. Is it clean and smooth, or rough, with hairs that hold sand?
option-edge-clean = Clean and smooth
option-edge-rough = Rough and hairy
seen-edge-clean = a clean, smooth rim
seen-edge-rough = a rough rim with hairs
# gordon2016, p. 269-271
why-edge = Fine hairs hold a case to the ground where it was laid. In one kind they stay on the rim and catch sand, and the whole case is tough. In a kind that looks much like it the rim is clean, and the case is almost see-through. A few hairs left in a sheltered spot are enough to count as rough.

## flaps

name-flaps = Aprons, deep or narrow
question-flaps = Aprons are the flat flaps between the horns, one at each end. Are both deep, or is at least one only a narrow strip?
option-flaps-deep = Both flaps are deep
option-flaps-narrow = One is a narrow strip
seen-flaps-deep = deep flaps at both ends
seen-flaps-narrow = a flap that is only a narrow strip
# porcu2017, abstract (long-nosed and Norwegian skate, blonde ray); gordon2016, p. 263-267, 271
why-flaps = Some kinds have two large aprons, others one or two shallow ones. When sizes overlap, the aprons tell such kinds apart. Aprons fray and snap off on the beach, so if a border looks torn, say that you can't tell.

## long-horns

name-long-horns = Length of the horns
question-long-horns = Find the longest horn that is still whole, right to its thin tip, and bend it gently along the wet case. Is it longer than half the case?
option-long-horns-long = Longer than half
option-long-horns-short = Shorter than half
seen-long-horns-long = a horn longer than half of the case
seen-long-horns-short = whole horns, all shorter than half of the case
# sardinia-thesis, section 5.5 (front horns 32 of 104 mm); gordon2016, p. 263-265 (blonde ray
# 109 mm without, 210 with its horns); stehmannburkel1984 (shagreen ray)
why-long-horns = In some kinds the front horns are short and stout, in others thick and long, or even longer than the case. Long horns are the first thing to snap off, and then they look short. So if every tip is blunt or torn, say that you can't tell.

## taxa

taxon-scyliorhinus-canicula = Small-spotted catshark
fact-scyliorhinus-canicula = Each small-spotted catshark mother lays cases of her own size, shape and colour.
taxon-scyliorhinus-stellaris = Nursehound
fact-scyliorhinus-stellaris = A young nursehound grows in its case for nine to eleven months before it hatches.
taxon-galeus-melastomus = Blackmouth catshark
fact-galeus-melastomus = Blackmouth catsharks live in deep water, at the outer edge of the shelf and on the slope below it.
taxon-raja-asterias = Mediterranean starry ray
fact-raja-asterias = Mediterranean starry rays live from the shore down to about 100 metres, and lay most of their cases from summer to early autumn.
taxon-raja-polystigma = Speckled ray
fact-raja-polystigma = Speckled rays live only in the western Mediterranean, mostly 100 to 400 metres down.
taxon-raja-radula = Rough ray
fact-raja-radula = A young rough ray needs only about four months to hatch.
taxon-raja-miraletus = Brown ray
fact-raja-miraletus = Brown rays seem to come back to the same sandy places every year to lay.
taxon-leucoraja-melitensis = Maltese skate
fact-leucoraja-melitensis = Maltese skates live only in the western Mediterranean, mainly off Tunisia and around Malta.
# Range and scarcity: stehmannburkel1984, species account; capsules.json, Leucoraja melitensis.
# The table of porcu2017 with its size could not be read. Photographing rather than keeping it is our
# advice, no sourced rule.
leave-leucoraja-melitensis = If it may be a Maltese skate's, please photograph this case from both sides with a ruler, and leave it where it is. These skates are scarce and live nowhere else, and I have no size of their cases to compare with. So a photo and your measurements are worth more than a case on a shelf.
taxon-leucoraja-naevus = Cuckoo ray
fact-leucoraja-naevus = Around Britain, young cuckoo rays live further from the shore than the young of other rays.
taxon-raja-montagui = Spotted ray
fact-raja-montagui = Spotted rays lay in summer, and their young hatch five to six months later.
taxon-raja-clavata = Thornback ray
fact-raja-clavata = Thornback rays live from very shallow water down to about 300 metres.
taxon-raja-undulata = Undulate ray
fact-raja-undulata = Two young undulate rays have been found growing in one case.
taxon-leucoraja-fullonica = Shagreen ray
fact-leucoraja-fullonica = Shagreen rays like cold water and live as deep as 550 metres.
taxon-leucoraja-circularis = Sandy ray
fact-leucoraja-circularis = Sandy rays live offshore, mostly about 100 metres down.
taxon-raja-brachyura = Blonde ray
fact-raja-brachyura = Blonde rays lay from February to August, and a young one needs about seven months to hatch.
taxon-dipturus-oxyrinchus = Long-nosed skate
fact-dipturus-oxyrinchus = Long-nosed skates live in deep water: the mothers studied off Sardinia were caught 273 to 625 metres down.
taxon-dipturus-nidarosiensis = Norwegian skate
fact-dipturus-nidarosiensis = The first Norwegian skate from the Strait of Sicily was caught in 2017, about 550 metres down.
taxon-rostroraja-alba = White skate
fact-rostroraja-alba = White skates live from the southern British Isles to South Africa, and have become very rare in the north.
# gordon2016, p. 271: five cases, one of them an old museum piece. Photographing rather than
# keeping it is our advice, no sourced rule.
leave-rostroraja-alba = If it may be a white skate's, please photograph this case from both sides with a ruler, and leave it where it is. Very few cases of this kind have ever been measured, so a photo that a checker can see is worth more than a case on a shelf.
