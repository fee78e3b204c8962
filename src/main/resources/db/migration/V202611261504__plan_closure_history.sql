-- What a list of closings said before it was sent anew.
call keep_history('laboratory_closure', 'laboratory');
