# The sentences of the British Isles in English. Facts about animals are said in our own
# words; their sources stand in profiles.yaml. Button labels have at most 24 characters.

region-name = British Isles
# Reserves and signs: common practice. Protected ground: Scottish Government, Red Rocks and
# Longay Marine Protected Area, permanent since 9 February 2023. Not taking cases from the
# sea bed: common practice.
region-safety = Some beaches and reserves have their own rules about taking things home: read the signs, and when in doubt only take a photo. Cases on the sea bed stay there; off the west of Scotland a place where flapper skates lay has been protected since 2023.
# common practice
region-emergency = If someone is in danger, call 999 or 112 and ask for the coastguard.
# common practice
region-tides = Tide times: use the official tables of the national hydrographic or marine office. I do not work out tides.

## outline

name-outline = Slim or broad
question-outline = Lay the case flat and leave out its corners. Is it longer than two of its widths, one after the other?
option-outline-slim = Longer than two widths
option-outline-broad = Two widths or less
seen-outline-slim = a slim case, more than twice as long as wide
seen-outline-broad = a broad case, at most twice as long as wide
# Lengths and widths in profiles.yaml: slim 2.4 to 3.2, broad 1.1 to 1.9 times as long as wide.
why-outline = The case without its corners is called the capsule. The small sharks of this region lay slim capsules, well over twice as long as wide. Skates and rays lay broad ones. You can still see this when every corner has broken off, so it comes first.

## corners

name-corners = Corners
question-corners = Look at the four corners. Are there thin strings that curl up, or stiff hooks or points?
option-corners-strings = Curly strings
option-corners-hooks = Stiff hooks or points
seen-corners-strings = curly strings at the corners
seen-corners-hooks = stiff hooks or points at the corners
# gordon2016, p. 271-272
why-corners = Tendrils are strings that hold the case on to seaweed. One small slim case of this region has no tendrils, only short hooks. A large case with stiff points belongs to a skate or ray. If all four corners are gone, say that you can't tell.

## net

name-net = Lines or net
question-net = Wet the case and let light fall on it from the side. Do short ridges run across the long lines, like a net?
option-net-net = Ridges like a net
option-net-lines = Long lines or smooth
seen-net-net = ridges that cross like a net
seen-net-lines = long lines only, or a smooth surface
# gordon2016, p. 258-260
why-net = One small skate has a surface like a net: long lines, with short ridges across. Its thin keels (the blades along the sides) often break off on the way to the beach. The net stays, so it is the safer thing to look at.

## keel

name-keel = Keel along the sides
question-keel = A keel is a thin flat blade that stands out from the side, like the brim of a hat. Is there one along the sides?
option-keel-blade = Yes, a thin blade
option-keel-none = No blade at all
seen-keel-blade = a thin flat blade along both sides
seen-keel-none = no blade along the sides
# gordon2016, p. 260 (starry skate), p. 267 (thornback ray)
why-keel = A keel is part of the case from the day it is laid, and many kinds have none. So it splits the skates and rays into two groups. Thick keels last on the beach, thin ones can break away.

## front-flap

name-front-flap = Border of the apron
question-front-flap = An apron is the flat flap between two horns. Look at the larger one. Does its outer border bulge outwards, or run straight?
option-front-flap-bulging = It bulges outwards
option-front-flap-straight = It runs straight
seen-front-flap-bulging = a larger flap that bulges outwards
seen-front-flap-straight = a larger flap with a straight border
# gordon2016, p. 263, 269
why-front-flap = The larger apron is at the front of the case. Two small kinds without keels look alike once their horns are broken. In one the front apron bulges outwards, in the other it is broad and straight. If the border is torn, say that you can't tell.

## edge

name-edge = Rim along the sides
question-edge = Hold the rim along the long sides up to the light. Is it clean and smooth, or rough, with hairs that hold sand?
option-edge-clean = Clean and smooth
option-edge-rough = Rough and hairy
seen-edge-clean = a clean, smooth rim
seen-edge-rough = a rough rim with hairs
# gordon2016, p. 269-271
why-edge = Fine hairs hold a case to the ground where it was laid. In one kind they stay on the rim and catch sand, and the whole case is tough. In a kind that looks much like it the rim is clean, and the case is almost see-through. A few hairs left in a sheltered spot are enough to count as rough.

## taper

name-taper = Straight or narrowing
question-taper = Leave out the horns. Does the case stay about as wide all along, or is it clearly narrower at one end?
option-taper-even = As wide all along
option-taper-narrowing = Narrower at one end
seen-taper-even = sides that stay as far apart all along
seen-taper-narrowing = a case that narrows towards one end
# gordon2016, p. 268-269
why-taper = One ray lays cases that are widest at the front and narrowest at the back, where the short horns are. The kinds that look like it keep their width. This shows even when the long front horns have snapped off.

## back-horns

name-back-horns = Back horns
question-back-horns = Lay the case with its more domed side up. Look at the two horns of the narrower end. Do they bend upwards, or lie level?
option-back-horns-upturned = They bend upwards
option-back-horns-level = They lie level
seen-back-horns-upturned = back horns that bend upwards
seen-back-horns-level = back horns that lie level with the case
# gordon2016, p. 268-269
why-back-horns = The horns at the back are the shorter pair. In one ray they are short and stout, have a small hook, and bend upwards. A bent horn may also have dried that way, so soak the case before you look.

## coat

name-coat = Coat like bark
question-coat = Some large cases wear a thick pale coat like tree bark, which peels off in strips. Can you see one, even a patch of it?
option-coat-bark = A coat like bark
option-coat-bare = Bare, or a few hairs
seen-coat-bark = a coat like tree bark
seen-coat-bare = no thick coat
# gordon2016, p. 260-262
why-coat = The largest skates here lay cases with a thick coat of fibres. It is pale brown, with a darker case beneath. It wears off in patches on the beach, so look along the sides and near the horns for what is left.

## flaps

name-flaps = Aprons, deep or narrow
question-flaps = Aprons are the flat flaps between the horns, one at each end. Are both deep, or is at least one only a narrow strip?
option-flaps-deep = Both flaps are deep
option-flaps-narrow = One is a narrow strip
seen-flaps-deep = deep flaps at both ends
seen-flaps-narrow = a flap that is only a narrow strip
# gordon2016, p. 261-263, 267, 271
why-flaps = Some kinds have two large aprons, others one or two shallow ones. When sizes overlap, the aprons tell such kinds apart. Aprons fray and snap off on the beach, so if a border looks torn, say that you can't tell.

## taxa

taxon-scyliorhinus-canicula = Small-spotted catshark
fact-scyliorhinus-canicula = Each small-spotted catshark mother lays cases of her own size, shape and colour.
taxon-scyliorhinus-stellaris = Nursehound
fact-scyliorhinus-stellaris = A young nursehound grows in its case for nine to eleven months before it hatches.
taxon-galeus-melastomus = Blackmouth catshark
fact-galeus-melastomus = Blackmouth catsharks live in deep water, at the outer edge of the shelf and on the slope below it.
taxon-amblyraja-radiata = Starry skate
fact-amblyraja-radiata = Starry skates like cold water and are common from the central North Sea to Iceland and the Barents Sea.
taxon-leucoraja-naevus = Cuckoo ray
fact-leucoraja-naevus = Young cuckoo rays live further from the shore than the young of other British rays.
taxon-raja-montagui = Spotted ray
fact-raja-montagui = Spotted rays lay in summer, and their young hatch five to six months later.
taxon-raja-clavata = Thornback ray
fact-raja-clavata = Thornback rays live from very shallow water down to about 300 metres.
taxon-raja-microocellata = Small-eyed ray
fact-raja-microocellata = Small-eyed rays live near the coast, and the grown ones go down to about 100 metres.
taxon-raja-undulata = Undulate ray
fact-raja-undulata = Two young undulate rays have been found growing in one case.
taxon-raja-brachyura = Blonde ray
fact-raja-brachyura = Blonde rays lay from February to August, and a young one needs about seven months to hatch.
taxon-dipturus-batis = Blue skate
fact-dipturus-batis = Blue skates lay their cases in spring and summer.
taxon-dipturus-intermedius = Flapper skate
fact-dipturus-intermedius = One flapper skate took 534 days to hatch, which is nearly a year and a half.
# Critically Endangered: Dodd et al., first report of an egg nursery (title and abstract).
# Beach finds are few and mostly from Orkney and west Scotland: gordon2016, p. 261-262.
# Photographing rather than keeping it is our advice, no sourced rule.
leave-dipturus-intermedius = Please photograph this case from both sides with a ruler, and leave it where it is. Flapper skates are critically endangered, so a photo that a checker can see is worth more than a case on a shelf.
taxon-rostroraja-alba = White skate
fact-rostroraja-alba = White skates live from the southern British Isles to South Africa, and have become very rare in the north.
# In England white skate is on Schedule 5 of the Wildlife and Countryside Act 1981 for taking,
# possession and sale: UK Government guidance, 13 June 2023. Whether an empty case counts was
# not checked, hence "may".
leave-rostroraja-alba = Please photograph this case from both sides with a ruler, and leave it where it is. White skates are protected by law in England, and that may include empty cases.
