# Sentences on checking what people found: what verifiers see and choose, and what finders hear.

# The picture of a measured length against the lengths of kinds.
lengths-measured = Measured: { $mm } mm ± { $plusMinus }.
lengths-least = Measured: at least { $mm } mm.
lengths-none = no length is published
lengths-kind = { $name }: { $low } to { $high } mm.
lengths-kind-none = { $name }: no length is published.

# What a verifier sees.
review-look = Look at it
review-come = Please write /start to me in a private chat first, then press the button again.
review-there = I show it to you in our private chat.
review-none = No find waits to be checked. Thank you.
review-gone = This find is not there any more, or it has changed. Write /review to see the next one.
review-own = This is a find of your own, so somebody else looks at it.
review-claimed = { $who } is looking at this find, since { $since }.
review-all-the-same = Look all the same
review-next = Next find
review-next-count = Next find ({ $count } wait)
review-album = Find no. { $number }
review-menu = Find no. { $number }: what do you make of it?
review-head = Find no. { $number }, { $date }, { $kind ->
    [left-alive] left alive where it was
   *[other] { $count ->
        [one] one case
       *[other] { $count } cases
    }
}.{ $unusual ->
    [yes] {" "}Unusual on this coast.
   *[no] {""}
}
review-place = Place: { $place }, ± { $metres } m
review-place-point = Place: { $place } ({ $point }), ± { $metres } m
review-place-named = Place: { $place }
review-soak = { $state ->
    [dry] Measured dry
    [damp] Measured damp
   *[soaked] Soaked{ $hours ->
        [none] {""}
       *[other] {" "}for { $hours } h
    }
}
review-length = Length: { $least ->
    [at-least] at least { $mm } mm
   *[exact] { $mm } ± { $plusMinus } mm
}
review-lengths = Measured one by one on a photo: { $lengths }. The length is the middle one.
review-width = Width: { $least ->
    [at-least] at least { $mm } mm
   *[exact] { $mm } ± { $plusMinus } mm
}
review-range = • { $name }: { $low } to { $high } mm long{ $memory ->
    [yes] {" "}(from memory)
   *[no] {""}
}, { $fits ->
    [yes] fits
   *[no] does not fit
}
review-ranking = { $sure ->
    [very-likely] Very likely
    [likely] Likely
    [shortlist] Not sure
   *[unknown] Not known
}: { $names }
review-ranked = { $name } { $percent } in 100
review-also-seen = Seen as well: { $seen }.
review-nothing-against = Nothing that was seen speaks against it.
review-lost = Lost: { $parts }.
review-doubt = The finder was not sure that it is an egg case.
review-note = Note: { $note }
review-no-photo = There is no photo.
review-asked = Asked: { $words }
review-answered = Answered: { $words }
review-answered-photo = Answered with a photo.
review-somebody = A verifier
review-decision = { $who }, { $when }: { $what }

# What a verifier chooses.
review-agree = I agree
review-other = Another kind
review-name = Name the kind
review-higher = Genus or family only
review-nothing = Not an egg case
review-ask = Ask the finder
review-which = Which kind is it?
review-which-higher = How far can it be told?
review-label-genus = Genus { $name }
review-label-family = Family { $name }
review-more = More
review-back = Back
review-why = Why? The finder reads this.
review-reason-size = The size
review-reason-shape = The shape
review-reason-surface = Surface or edge
review-reason-coast = The coast
review-reason-worn = Too worn
review-reason-photo = The photos
review-reason-own = Write the reason
review-reason-none = No reason
review-why-how = Reply to this message with the reason, in words that the finder understands.
review-ask-how = Reply to this message with your question about find no. { $number }. I pass it on to the finder, and the answer back to you.
review-words = Please write it in words, up to 500 letters, as a reply to this message.
review-kept = Kept for find no. { $number }: { $what }. { $told ->
    [yes] I have told the finder.
   *[no] The finder cannot be reached any more.
}
review-change = Change this decision
review-decided-before = You looked at this find before. { $said }
review-meanwhile = Somebody looked at this find first. { $said } You can add yours: both are kept, and the newest counts.
review-both = Add mine as well
review-outcome-agreed = agreed
review-outcome-other-name = takes it for { $name }
review-outcome-higher-rank = { $rank ->
    [family] family { $scientific }, not to be told further
   *[genus] genus { $scientific }, not to be told further
}
review-outcome-not-an-egg-case = not an egg case
review-outcome-why = { $what } ({ $why })
review-because-size = because of its size
review-because-shape = because of its shape, its horns or its strings
review-because-surface = because of its surface or its edge
review-because-coast = because of the coast on which it lay
review-because-worn = it is too worn to tell more
review-because-photo = the photos do not show more

# What the finder hears.
review-told-agreed = { $first ->
    [yes] { $who } looked at your find no. { $number } and agrees: { $old }.
   *[no] { $who } looked at your find no. { $number } once more and agrees: { $old }.
}
review-told-other-name = { $first ->
    [yes] { $who } looked at your find no. { $number } and names it: { $name } ({ $scientific }).
   *[no] { $who } looked at your find no. { $number } once more and names it: { $name } ({ $scientific }).
}
review-told-higher-rank = { $first ->
    [yes] { $who } looked at your find no. { $number }
   *[no] { $who } looked at your find no. { $number } once more
}. It belongs to the { $rank ->
    [family] family
   *[genus] genus
} { $scientific }, and cannot be told further.
review-told-not-an-egg-case = { $first ->
    [yes] { $who } looked at your find no. { $number }
   *[no] { $who } looked at your find no. { $number } once more
}. It is not an egg case.
review-told-why = The reason: { $why }
review-thanks-agreed = Thank you. Your record is checked now.
review-thanks-other-name = Thank you. Your record is checked now, and counts under this name.
review-thanks-higher-rank = That is often so, and it counts all the same. Thank you: your record is checked now.
review-thanks-not-an-egg-case = Many things on a beach look like one, so it was right to ask. Thank you for looking.
draft-unchecked = not yet

# Questions of verifiers, and answers.
letter-question = A verifier has a question about your find no. { $number }: “{ $words }”
    Reply to this message with words or a photo. I pass it on.
letter-sent = I have asked the finder of no. { $number }. I send you the answer.
letter-unreachable = The finder of no. { $number } cannot be reached any more.
letter-answer = Answer on find no. { $number }: “{ $words }”
letter-answer-photo = A photo as the answer on find no. { $number }.
letter-known-photo = I have this photo already. Please send another one, or answer in words.
letter-how = Please answer in words, up to 500 letters, or with a photo.
letter-thanks = Thank you. I pass it on, and keep it with find no. { $number }.
