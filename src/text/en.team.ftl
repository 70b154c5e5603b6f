# Sentences on who may do what: codes, invitations, and the people who help.

help-role = { $command } – { $what }
role-missing = This is only for people who help to run the survey. If somebody invited you, open the link they sent you. /help shows what you can do here.
role-missing-group = I cannot do this for you here. /help shows what I can do.
role-privately = Let us do this in our private chat: write the command to me there.
role-given = { $role ->
    [owner] You are the owner of this survey now.
    [coordinator] You are a coordinator now. Thank you for helping.
   *[verifier] You are a verifier now. Thank you for looking at what people found.
} { $role ->
    [verifier] Write /review to see the first find that waits.
   *[other] With /invite you ask people to help, with /team you see who does.
}
role-again = You have done this already, so there is nothing more to do. { $role ->
    [verifier] Write /review to see a find that waits.
   *[other] With /invite you ask people to help, with /team you see who does.
}
invite-whom = Whom do you want to ask? A coordinator plans survey days and asks verifiers to help. A verifier checks the names of finds.
invite-coordinator = A coordinator
invite-verifier = A verifier
invite-how = Pass my next message on to one person and to nobody else. Whoever uses it first becomes { $role ->
    [coordinator] a coordinator
   *[verifier] a verifier
}. It works once, until { $until }.
invite-link = Would you like to help { $role ->
    [coordinator] plan survey days
   *[verifier] check what people found
}? Open this link and press Start: { $link }
    Or write this to me in a private chat: /start { $code }
invite-words = Would you like to help { $role ->
    [coordinator] plan survey days
   *[verifier] check what people found
}? Write this to me in a private chat: /start { $code }
invite-used = Somebody used your invitation: there is a new { $role ->
    [coordinator] coordinator
   *[verifier] verifier
}. With /team you see who helps.
team-list = Who helps:
team-line = { $number }. { $name }, { $role ->
    [owner] owner
    [coordinator] coordinator
   *[verifier] verifier
} since { $since }
team-nameless = Somebody without a name
team-withdraw = Withdraw no. { $number }
team-more = More
team-really = { $name } is { $role ->
    [coordinator] a coordinator
   *[verifier] a verifier
} now. Shall I take that back? What they decided stays.
team-yes = Yes, take it back
team-no = No, leave it
team-left = Nothing has changed.
team-withdrawn = { $name } is not { $role ->
    [coordinator] a coordinator
   *[verifier] a verifier
} any more.
team-gone = This has been taken back already.
team-thanks = You are not { $role ->
    [coordinator] a coordinator
   *[verifier] a verifier
} here any more. Thank you for your help. Your own finds stay with you under /drafts.
code-refused = This link does not work. It may have been used already, or be older than a week. Please ask whoever sent it for a new one. To look at a find, write /find.
code-privately = Please bring this code to our private chat, where nobody else can read it.
