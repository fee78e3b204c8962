-- What was known of a tube in a submission before: taken back, counted in, put into another box, taken out.
call keep_history('submission_specimen', 'code');
