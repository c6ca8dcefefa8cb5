import { serve } from 'airspring';

serve(self);
